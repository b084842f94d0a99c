import { type Rule, replace, typed } from '../rule';
import { MINUS } from './line-edits';

export const typographicSign: Rule = {
  code: 'typographic-sign',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A minus is written with a dash or a typographic minus.',
    why: 'Text processors put a dash for the hyphen. It looks the same here, but a machine may drop it, and a lost minus on 2.00 moves the lens by 4.00 dioptres.',
    example: { wrong: 'R −4.50 –0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Writes the sign as -.',
    source: 'Common practice, no source.',
  },
  message: () => 'The sign is taken as minus. Write it as -.',
  fixes: (site) => [replace(site, 'Write the minus as -', typed(site).replace(MINUS, '-'), true)],
};
