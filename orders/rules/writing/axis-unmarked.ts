import { putBefore, type Rule } from '../rule';

export const axisUnmarked: Rule = {
  code: 'axis-unmarked',
  family: 'writing',
  level: ({ digits }, block) => (digits === 1 && block === 'order' ? 'warning' : 'hint'),
  page: {
    checks:
      'The third figure of a power has no x before it and is taken as the axis: it has no sign, is whole and at most 180.',
    levels: 'A warning for one digit in an order, a hint elsewhere.',
    why: 'Without the x a figure such as 175 may be an axis or an add of 1.75, and a lone 2 is more often an add than an axis.',
    example: { wrong: 'R -4.50 -0.75 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Writes x before the axis.',
    source: 'A retailer’s page on prescription figures shows axes without a mark.',
  },
  message: ({ digits }) =>
    digits === 1 ? 'Taken as the axis. Or is it the add?' : 'Taken as the axis. An x before it says so.',
  fixes: (site) => [putBefore(site, 'Write x before the axis', 'x ', false)],
};
