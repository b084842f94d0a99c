import type { Rule } from '../rule';

export const confirmationIdle: Rule = {
  code: 'confirmation-idle',
  family: 'writing',
  level: 'warning',
  page: {
    checks:
      'A confirmation that confirms nothing: it gives no reason or no name, its code is unknown or is one that nobody can confirm, or the line it quotes does not stand in the order any more.',
    why: 'A confirmation takes a question away, so somebody has to stand for it, with a reason that the next one can read. One that no longer fits its line was given for other figures.',
    example: {
      wrong: 'confirmed adds-differ "add R +2.00 L +2.25" by KO',
      right: 'confirmed adds-differ "add R +2.00 L +2.25" "the clinic says so" by KO',
    },
    source: 'Common practice, no source.',
  },
  message: ({ why, code }) => IDLE[why as Idle](String(code)),
};

/** Why a confirmation holds nothing. */
export type Idle = 'unsigned' | 'unknown-code' | 'not-confirmable' | 'stale';

const IDLE: Readonly<Record<Idle, (code: string) => string>> = {
  unsigned: () => 'This confirmation holds nothing: write the reason in quotes and the name behind `by`.',
  'unknown-code': (code) => `There is no finding “${code}”. Nothing is confirmed.`,
  'not-confirmable': (code) => `“${code}” cannot be confirmed away. Nothing is confirmed.`,
  stale: () => 'The quoted line does not stand in this order. Nothing is confirmed.',
};
