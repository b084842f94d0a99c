import type { Rule } from '../rule';
import { instrumentOverdue } from './instrument-overdue';
import { instrumentUnknown } from './instrument-unknown';
import { measuredWord } from './measured-word';
import { nearTheLimit } from './near-the-limit';
import { negativeAdd } from './negative-add';
import { notJudged } from './not-judged';
import { notRead } from './not-read';
import { standardMissing } from './standard-missing';
import { standardUnknown } from './standard-unknown';

/** Readings that may not mean what they say. */
export const BENCH: readonly Rule[] = [
  instrumentOverdue,
  instrumentUnknown,
  measuredWord,
  nearTheLimit,
  negativeAdd,
  notJudged,
  notRead,
  standardMissing,
  standardUnknown,
];
