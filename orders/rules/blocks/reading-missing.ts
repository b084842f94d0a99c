import { type Rule, typed } from '../rule';

export const readingMissing: Rule = {
  code: 'reading-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line that only a reading can have stands in an order above any reading, or after `end`.',
    why: 'What was ordered and what was measured share most of their words. A measurement without its reading has no date, no instrument and nobody who took it, and it is not judged.',
    example: { wrong: 'zero +0.03', right: 'reading 2026-11-24 14:30 by KO with FOC-A' },
    fix: 'Opens a reading above the line. Its date is still to be filled in.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” is measured, and no reading is open here. The line is not taken.`,
  fixes: (site) => {
    const { line, start } = site.finding;
    const indent = (site.lines[line] ?? '').slice(0, start);
    const edit = { line, start: 0, end: 0, text: `${indent}reading\n` };
    return typed(site) === '' ? [] : [{ title: 'Open a reading above this line', safe: false, edits: [edit] }];
  },
};
