import type { Rule } from '../rule';

export const addForBoth: Rule = {
  code: 'add-for-both',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'One add stands at the end of a line with two eyes.',
    why: 'It is taken for both eyes, and may have been meant for the left one alone. A line of its own, or an add behind each power, leaves no doubt.',
    example: { wrong: 'R -4.50 L -4.25 add +2.00', right: 'R -4.50 add +2.00' },
    source: 'Common practice, no source.',
  },
  message: () => 'Taken for both eyes.',
};
