import { type Rule, replace, typed } from '../rule';

export const quoteOpen: Rule = {
  code: 'quote-open',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A quotation has no closing mark and runs to the end of the line.',
    why: 'A comment behind it becomes part of the text, and the end of the text is not where the writer meant it.',
    example: { wrong: 'note "call the shop', right: 'note "call the shop"' },
    fix: 'Closes the quotation at the end of the line.',
    source: 'Common practice, no source.',
  },
  message: () => 'The closing quote is missing. The text is taken to the end of the line.',
  fixes: (site) => [replace(site, 'Close the quote', `${typed(site)}"`, false)],
};
