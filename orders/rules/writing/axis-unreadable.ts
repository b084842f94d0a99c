import type { Rule } from '../rule';

export const axisUnreadable: Rule = {
  code: 'axis-unreadable',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'Letters or other signs touch the figure of an axis.',
    why: 'An axis in handwriting looked like 3u! and was 30. Threes and fives, twos and sevens look alike, and only a call settles it.',
    example: { wrong: 'R -4.50 -0.75 x 3u!', right: 'R -4.50 -0.75 x 030' },
    source: 'A help page on reading a prescription, of a British seller of safety spectacles.',
  },
  message: () => 'This axis cannot be read and is not taken. Ask whoever wrote it.',
};
