import type { Rule } from '../rule';

export const nameMissing: Rule = {
  code: 'name-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'An order has no name.',
    why: 'The name ties the slip, the tray and the reading together, and every report speaks of the job by it. A job number is enough; the name of a patient does not belong here.',
    example: { wrong: 'order', right: 'order QL-1042' },
    source: 'Common practice, no source.',
  },
  message: () => 'This order has no name. A job number will do.',
};
