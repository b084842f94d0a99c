import type { Rule } from '../rule';
import { addLineMismatch } from './add-line-mismatch';
import { addReadTwoWays } from './add-read-two-ways';
import { addWrongSurface } from './add-wrong-surface';
import { balanceFarOff } from './balance-far-off';
import { centresContradict } from './centres-contradict';
import { clockAlone } from './clock-alone';
import { clockFused } from './clock-fused';
import { clockOnSlab } from './clock-on-slab';
import { clockPlainDiffers } from './clock-plain-differs';
import { decisionDiffers } from './decision-differs';
import { distanceContradicts } from './distance-contradicts';
import { engravedDiffers } from './engraved-differs';
import { finerThanStep } from './finer-than-step';
import { halvesExchanged } from './halves-exchanged';
import { heightNotRead } from './height-not-read';
import { impactBatchGlass } from './impact-batch-glass';
import { inputMissing } from './input-missing';
import { instrumentImpossible } from './instrument-impossible';
import { instrumentOffZero } from './instrument-off-zero';
import { instrumentOverdue } from './instrument-overdue';
import { instrumentUnknown } from './instrument-unknown';
import { intermediateUnusual } from './intermediate-unusual';
import { linesOrCylinder } from './lines-or-cylinder';
import { measuredWord } from './measured-word';
import { nearTheLimit } from './near-the-limit';
import { nearlyUsedUp } from './nearly-used-up';
import { negativeAdd } from './negative-add';
import { notJudged } from './not-judged';
import { notRead } from './not-read';
import { otherStageOutside } from './other-stage-outside';
import { placedBySum } from './placed-by-sum';
import { placesContradict } from './places-contradict';
import { prismInBoth } from './prism-in-both';
import { readHalvesDisagree } from './read-halves-disagree';
import { readNotOrdered } from './read-not-ordered';
import { readingsApart } from './readings-apart';
import { readingsDiffer } from './readings-differ';
import { readingsOutOfOrder } from './readings-out-of-order';
import { referenceOutside } from './reference-outside';
import { repeatOutlier } from './repeat-outlier';
import { resultUnclear } from './result-unclear';
import { reworkUnsaid } from './rework-unsaid';
import { safetyThin } from './safety-thin';
import { standardMissing } from './standard-missing';
import { standardScope } from './standard-scope';
import { standardUnknown } from './standard-unknown';
import { statedPositionOff } from './stated-position-off';
import { testedAgain } from './tested-again';
import { warpNearLimit } from './warp-near-limit';
import { withinUncertainty } from './within-uncertainty';
import { zeroLikeShift } from './zero-like-shift';

/** Readings that may not mean what they say. */
export const BENCH: readonly Rule[] = [
  addLineMismatch,
  addReadTwoWays,
  addWrongSurface,
  clockAlone,
  balanceFarOff,
  centresContradict,
  clockFused,
  clockOnSlab,
  clockPlainDiffers,
  distanceContradicts,
  decisionDiffers,
  engravedDiffers,
  finerThanStep,
  impactBatchGlass,
  inputMissing,
  halvesExchanged,
  heightNotRead,
  instrumentImpossible,
  instrumentOffZero,
  instrumentOverdue,
  instrumentUnknown,
  intermediateUnusual,
  linesOrCylinder,
  measuredWord,
  nearTheLimit,
  nearlyUsedUp,
  negativeAdd,
  notJudged,
  notRead,
  placedBySum,
  placesContradict,
  otherStageOutside,
  prismInBoth,
  readHalvesDisagree,
  readNotOrdered,
  readingsApart,
  readingsDiffer,
  readingsOutOfOrder,
  referenceOutside,
  repeatOutlier,
  reworkUnsaid,
  safetyThin,
  resultUnclear,
  standardMissing,
  standardScope,
  standardUnknown,
  statedPositionOff,
  warpNearLimit,
  testedAgain,
  withinUncertainty,
  zeroLikeShift,
];
