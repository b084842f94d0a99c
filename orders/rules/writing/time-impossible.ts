import type { Rule } from '../rule';

export const timeImpossible: Rule = {
  code: 'time-impossible',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A time of day is on no clock.',
    why: 'Of two readings of one day the later counts, so the time has to be one.',
    example: { wrong: 'reading 2026-11-24 14:60', right: 'reading 2026-11-24 15:00' },
    source: 'ISO 8601.',
  },
  message: ({ typed }) => `There is no ${typed} on the clock. The time is not taken.`,
};
