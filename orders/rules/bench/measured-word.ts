import type { Rule } from '../rule';

export const measuredWord: Rule = {
  code: 'measured-word',
  family: 'bench',
  level: 'error',
  page: {
    checks: 'A measured quantity is answered by a word or a tick instead of a figure.',
    why: 'A figure can be held against a limit, and looked at again when the wearer comes back; “ok” cannot. It is understood, and it does not count as read.',
    example: { wrong: 'pd ok', right: 'pd 63.5' },
    source: 'Common practice, no source.',
  },
  message: ({ word }) => `“${word}” is no figure. This does not count as read.`,
};
