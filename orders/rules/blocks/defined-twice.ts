import type { Rule } from '../rule';

export const definedTwice: Rule = {
  code: 'defined-twice',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'Two blocks of one file declare an instrument or a house set by the same name, or the file has two blocks of defaults. The first one holds.',
    why: 'A reading names its instrument by the name alone. Nobody can say afterwards which of the two was on the bench.',
    example: { wrong: 'instrument FOC-A', right: 'instrument FOC-B' },
    source: 'Common practice, no source.',
  },
  message: ({ name }) => `“${name}” stands above already. The first one holds, and this one is not used.`,
};
