import { putBefore, type Rule, typed } from '../rule';

export const signMissing: Rule = {
  code: 'sign-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A sphere or a cylinder has no sign; zero and plano need none, and an add may go without.',
    why: 'A lost minus on 2.00 moves the lens by 4.00 dioptres. The sign cannot be guessed, not even from the other eye.',
    example: { wrong: 'R 4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'One fix for each sign; neither is applied without being chosen.',
    source: 'The power sign was 11 % of office errors in a laboratory survey (Pacific University thesis, 1992).',
  },
  message: () => 'This power has no sign. Is it plus or minus?',
  fixes: (site) => ['+', '-'].map((sign) => putBefore(site, `Write ${sign}${typed(site)}`, sign, false)),
};
