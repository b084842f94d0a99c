import { type Rule, replace, typed } from '../rule';

/** What each look-alike stands for on a plain keyboard. */
const PLAIN: Readonly<Record<string, string>> = { '×': 'x', х: 'x', Х: 'x' };

export const lookAlike: Rule = {
  code: 'look-alike',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A letter or a blank looks like the usual one and is another: ×, a Cyrillic х, a no-break or thin space.',
    why: 'The line is understood here. A search for the usual letter, or another program, will not find it.',
    example: { wrong: 'R -4.50 -0.75 × 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Writes the plain letter or blank.',
    source: 'common practice, no source',
  },
  message: () => 'This looks like a plain letter or blank and is another one. It is read as the plain one.',
  fixes: (site) => [replace(site, 'Write it plainly', PLAIN[typed(site)] ?? ' ', true)],
};
