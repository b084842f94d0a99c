import type { Rule } from '../rule';

export const figuresTouch: Rule = {
  code: 'figures-touch',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'Two figures run into each other, which they may only when the second has a sign, as in -4.50-0.75.',
    why: 'In -4,50,75 the second comma is a decimal mark or stands between two figures; in -4.5.0 one point is too many. Each guess is another lens.',
    example: { wrong: 'R -4.50.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source: 'Common practice, no source.',
  },
  message: () => 'Two figures run into each other. Where does the first one end?',
};
