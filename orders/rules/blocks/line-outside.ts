import type { Rule } from '../rule';

export const lineOutside: Rule = {
  code: 'line-outside',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line stands above the first block of the file. Only `standard` and comments may stand there.',
    why: 'Nobody can say which job the line belongs to, so it is not taken.',
    example: { wrong: 'R -4.50 -0.75 x 022', right: 'order QL-1042' },
    fix: 'Opens an order above the line. Its name is still to be filled in.',
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” stands above the first order and belongs to none. The line is not taken.`,
  fixes: ({ finding: { line } }) => [
    { title: 'Open an order above this line', safe: false, edits: [{ line, start: 0, end: 0, text: 'order\n' }] },
  ],
};
