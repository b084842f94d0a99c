import type { Rule } from '../rule';

export const axisMissing: Rule = {
  code: 'axis-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A cylinder has no axis, or an axis sign has no figure behind it.',
    why: 'The lens cannot be made. A guess may be wrong by 90 degrees, and then a cylinder of 1.25 leaves 2.50 dioptres of cylinder.',
    example: { wrong: 'R -4.50 -1.25', right: 'R -4.50 -1.25 x 022' },
    source:
      'The cylinder axis was 11 % of office errors in a laboratory survey (Pacific University thesis, 1992); the doubled error is arithmetic.',
  },
  message: () => 'The axis is missing. A cylinder cannot be made without it.',
};
