import type { Rule } from '../rule';

export const baseRange: Rule = {
  code: 'base-range',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'The base of a prism is an angle beyond 0 to 360 degrees.',
    why: 'The angle says where the thick edge lies. A prism whose base is on no circle cannot be made.',
    example: { wrong: 'prism R 2.00 base 400', right: 'prism R 2.00 base 040' },
    source: 'Common practice, no source.',
  },
  message: ({ digits }) => `A base is an angle from 0 to 360. ${digits} is not taken.`,
};
