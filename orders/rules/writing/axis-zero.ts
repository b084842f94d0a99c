import { type Rule, replace } from '../rule';

export const axisZero: Rule = {
  code: 'axis-zero',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'An axis is written as 0.',
    why: 'Axis 0 and axis 180 are the same direction. A rule of thumb for turning the cylinder form makes a 0 out of axis 90; written as 180 it cannot be taken for an empty box.',
    example: { wrong: 'R +0.50 -0.25 x 0', right: 'R +0.50 -0.25 x 180' },
    fix: 'Writes 180; the lens stays the same.',
    source:
      'A German question page on sphere and cylinder. Writing 180 for the horizontal is common practice, no source.',
  },
  message: () => 'Taken as 180, the same direction.',
  fixes: (site) => [replace(site, 'Write 180', '180', true)],
};
