import { lineWord } from '../../../grammar';
import type { Rule } from '../rule';

export const lineUnfinished: Rule = {
  code: 'line-unfinished',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line stops before it says what its first word asks for, or something else stands in that place.',
    why: 'Half a line looks like a whole one on a full slip. What is missing here is not filled in from elsewhere.',
    example: { wrong: 'clock R', right: 'clock R +6.25' },
    source: 'Common practice, no source.',
  },
  message: ({ word }) => {
    const syntax = lineWord(String(word))?.syntax;
    return `Something is missing here.${syntax ? ` The line reads “${syntax}”.` : ''}`;
  },
};
