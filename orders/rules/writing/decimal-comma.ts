import { type Rule, replace, typed } from '../rule';
import { standsAlone } from './line-edits';

export const decimalComma: Rule = {
  code: 'decimal-comma',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A figure has a decimal comma.',
    why: 'In many countries 1,50 is one and a half. Whoever takes the comma for a mark between two figures has 1 and 50, and whoever drops it has 150.',
    example: { wrong: 'R -1,50 -0,75 x 022', right: 'R -1.50 -0.75 x 022' },
    fix: 'Writes a point for the comma.',
    source: 'A French note on reading spectacle corrections (2022).',
  },
  message: () => 'The comma is taken as a decimal point.',
  fixes: (site) => {
    const figure = typed(site);
    const text = figure.replace(',', '.');
    // Two digits on either side may also be two lengths, as in a PD of 63 and 60.
    const safe = standsAlone(site) && !/^\d\d,\d\d$/.test(figure);
    return [replace(site, `Write ${text}`, text, safe)];
  },
};
