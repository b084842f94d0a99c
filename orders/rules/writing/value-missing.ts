import type { Rule } from '../rule';

export const valueMissing: Rule = {
  code: 'value-missing',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A word waits for a figure or a name that is not there.',
    why: 'A prism without its base, or a base without its amount, stops the job. Everything else on the line is taken.',
    example: { wrong: 'prism R 2.00 base', right: 'prism R 2.00 base 014' },
    source: 'A question page on base directions: a prism without a base cannot be made.',
  },
  message: ({ word }) => `What belongs to “${word}” is missing.`,
};
