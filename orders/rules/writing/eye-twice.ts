import type { Rule } from '../rule';

export const eyeTwice: Rule = {
  code: 'eye-twice',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'One line gives the same eye two values, or a value that names no eye, and so stands for both, beside one that does.',
    why: 'One of the two was meant for the other eye, which then has none. Nobody can say which.',
    example: { wrong: 'height R 17 R 17', right: 'height R 17 L 17' },
    source: 'Common practice, no source.',
  },
  message: ({ word }) =>
    word === null
      ? 'Which eye is the first figure for? Without an eye it stands for both, and another one follows.'
      : `“${String(word)}” stands twice in this line. Which of the two is for the other eye?`,
};
