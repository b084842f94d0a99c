import type { Rule } from '../rule';

export const orderLineBelowReading: Rule = {
  code: 'order-line-below-reading',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A line that only an order can have stands below a reading. It is taken as a line of the order.',
    why: 'The meaning is clear, since nobody measures a design. But the next person looks for it above the reading, and may write it a second time.',
    example: {
      wrong: 'reading 2026-11-24\n  R -4.50 -0.75 x 022\n  design bifocal flat-top 28',
      right: 'design bifocal flat-top 28\nreading 2026-11-24\n  R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” is a line of the order and counts as one, though it stands below a reading.`,
};
