import type { Rule } from '../rule';

export const twoEyes: Rule = {
  code: 'two-eyes',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'Two eyes stand on one line.',
    why: 'Powers under one another are compared at a glance. On one line the left eye is easily read past.',
    example: { wrong: 'R -4.50 L -4.25', right: 'R -4.50' },
    source: 'Common practice, no source.',
  },
  message: () => 'Both eyes are read. A line for each is easier to check.',
};
