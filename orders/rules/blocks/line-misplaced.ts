import type { Rule } from '../rule';

export const lineMisplaced: Rule = {
  code: 'line-misplaced',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'A line stands in a block that cannot have it: a line of an order in an instrument or a house set, or a line of one job among the defaults. It is not taken.',
    why: 'A `pd 63` in an instrument belongs to a job, and to which nobody can say. Among the defaults `make R` would leave the left lens out of every order of the file, and a power or a PD would be that of another wearer.',
    example: { wrong: '  pd 63', right: '  note in the front room' },
    source: 'Common practice, no source.',
  },
  message: ({ word, block }) =>
    `“${word}” has no meaning in ${BLOCKS[String(block)] ?? 'this block'}. The line is ignored.`,
};

const BLOCKS: Readonly<Record<string, string>> = {
  instrument: 'an instrument',
  tolerance: 'a house set',
  defaults: 'the defaults, since it belongs to one order',
};
