import type { Rule } from '../rule';

const IN: Readonly<Record<string, string>> = {
  instrument: 'an instrument',
  tolerance: 'a house set',
  defaults: 'the defaults',
};

export const lineOutside: Rule = {
  code: 'line-outside',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'A line stands above the first block of the file, where only `standard` and comments may stand, or in a block that cannot hold it, such as a power among the lines of an instrument.',
    why: 'Nobody can say which job the line belongs to, so it is not taken.',
    example: { wrong: 'R -4.50 -0.75 x 022', right: 'order QL-1042' },
    fix: 'Opens an order above the line. Its name is still to be filled in.',
    source: 'Common practice, no source.',
  },
  message: ({ word, in: block }) =>
    block === undefined
      ? `“${word}” stands above the first order and belongs to none. The line is not taken.`
      : `“${word}” is no line of ${IN[String(block)]}. The line is not taken.`,
  fixes: ({ finding: { line } }) => [
    { title: 'Open an order above this line', safe: false, edits: [{ line, start: 0, end: 0, text: 'order\n' }] },
  ],
};
