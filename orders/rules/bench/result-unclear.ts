import type { Rule } from '../rule';

export const resultUnclear: Rule = {
  code: 'result-unclear',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A line gives two opposite results for the same lens or the pair, or words behind a result speak against it.',
    why: 'One of the two is wrong, and nobody but the one who tested knows which. Of two results the failed one counts until the line is clear.',
    example: { wrong: 'cosmetic passed failed', right: 'cosmetic R passed L passed' },
    source: 'Common practice, no source.',
  },
  message: ({ both }) =>
    both
      ? 'Passed and failed for the same lens. Name the lens of each, or strike out one of them.'
      : 'These words speak against the result in front of them. Write the result of each lens: R passed L failed.',
};
