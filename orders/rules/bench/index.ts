import type { Rule } from '../rule';
import { decisionDiffers } from './decision-differs';
import { instrumentOverdue } from './instrument-overdue';
import { instrumentUnknown } from './instrument-unknown';
import { measuredWord } from './measured-word';
import { nearTheLimit } from './near-the-limit';
import { nearlyUsedUp } from './nearly-used-up';
import { negativeAdd } from './negative-add';
import { notJudged } from './not-judged';
import { notRead } from './not-read';
import { readingsApart } from './readings-apart';
import { repeatOutlier } from './repeat-outlier';
import { standardMissing } from './standard-missing';
import { standardUnknown } from './standard-unknown';
import { withinUncertainty } from './within-uncertainty';

/** Readings that may not mean what they say. */
export const BENCH: readonly Rule[] = [
  decisionDiffers,
  instrumentOverdue,
  instrumentUnknown,
  measuredWord,
  nearTheLimit,
  nearlyUsedUp,
  negativeAdd,
  notJudged,
  notRead,
  readingsApart,
  repeatOutlier,
  standardMissing,
  standardUnknown,
  withinUncertainty,
];
