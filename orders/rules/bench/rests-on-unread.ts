import type { Rule } from '../rule';

export const restsOnUnread: Rule = {
  code: 'rests-on-unread',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'An order was read on an instrument, takes from defaults or is judged by a house set of which a line was not understood.',
    why: 'A zero that could not be read comes off no power, and a default that could not be read holds for no order. The lines of the order are all understood, and the verdict rests on one that is not.',
    example: { wrong: '  zero +0.O3', right: '  zero +0.03' },
    source: 'Common practice, no source.',
  },
  message: ({ what, name, code }) =>
    `${what === 'defaults' ? 'The defaults of this file have' : `The ${what === 'house' ? 'house set' : 'instrument'} ${name} has`} a line that was not understood (${code}). Mend it there; until then nothing that rests on it is accepted.`,
};
