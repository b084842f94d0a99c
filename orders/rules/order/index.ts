import type { Rule } from '../rule';
import { addMissing } from './add-missing';
import { addNegative } from './add-negative';
import { addsDiffer } from './adds-differ';
import { axisWithoutCylinder } from './axis-without-cylinder';
import { balanceForBoth } from './balance-for-both';
import { balanceWithPower } from './balance-with-power';
import { basesApart } from './bases-apart';
import { blankShort } from './blank-short';
import { compensationUnsaid } from './compensation-unsaid';
import { crossRoom } from './cross-room';
import { decentreUnsaid } from './decentre-unsaid';
import { degressionBeyondAdd } from './degression-beyond-add';
import { designMissing } from './design-missing';
import { edImpossible } from './ed-impossible';
import { eyeMissing } from './eye-missing';
import { eyeWordsMixed } from './eye-words-mixed';
import { formsMixed } from './forms-mixed';
import { heightBeyondFrame } from './height-beyond-frame';
import { heightDatumUnclear } from './height-datum-unclear';
import { heightImplausible } from './height-implausible';
import { heightMissing } from './height-missing';
import { heightsApart } from './heights-apart';
import { intermediateBeyondAdd } from './intermediate-beyond-add';
import { keptDiffers } from './kept-differs';
import { materialUnknown } from './material-unknown';
import { nearImbalance } from './near-imbalance';
import { nearPdImplausible } from './near-pd-implausible';
import { nearPdUnsaid } from './near-pd-unsaid';
import { nearPdWider } from './near-pd-wider';
import { notForThisLens } from './not-for-this-lens';
import { oppositeSigns } from './opposite-signs';
import { pdHalvesDisagree } from './pd-halves-disagree';
import { pdHalvesMissing } from './pd-halves-missing';
import { pdHalvesUneven } from './pd-halves-uneven';
import { pdImplausible } from './pd-implausible';
import { pdMissing } from './pd-missing';
import { powerUnsaid } from './power-unsaid';
import { prismAngleForBoth } from './prism-angle-for-both';
import { prismBaseMissing } from './prism-base-missing';
import { prismOneSided } from './prism-one-sided';
import { prismRelative } from './prism-relative';
import { prismRepeated } from './prism-repeated';
import { prismUnusual } from './prism-unusual';
import { quarterStep } from './quarter-step';
import { rxDiffers } from './rx-differs';
import { safetyLens } from './safety-lens';
import { segmentUnsaid } from './segment-unsaid';
import { slabForBoth } from './slab-for-both';
import { slabSide } from './slab-side';
import { supplyUnsaid } from './supply-unsaid';
import { thinningUnsaid } from './thinning-unsaid';
import { tiltMatters } from './tilt-matters';
import { tintDepthMissing } from './tint-depth-missing';
import { unusualValue } from './unusual-value';
import { upperSegmentUnordered } from './upper-segment-unordered';
import { useMissing } from './use-missing';
import { usePowerMissing } from './use-power-missing';
import { verificationDiffers } from './verification-differs';
import { vertexMatters } from './vertex-matters';
import { vertexUnsaid } from './vertex-unsaid';

/** Orders that cannot be right, or that will surprise someone. */
export const ORDER: readonly Rule[] = [
  addMissing,
  addNegative,
  addsDiffer,
  axisWithoutCylinder,
  balanceForBoth,
  balanceWithPower,
  basesApart,
  blankShort,
  compensationUnsaid,
  crossRoom,
  decentreUnsaid,
  degressionBeyondAdd,
  designMissing,
  edImpossible,
  eyeMissing,
  eyeWordsMixed,
  formsMixed,
  heightBeyondFrame,
  heightDatumUnclear,
  heightImplausible,
  heightMissing,
  heightsApart,
  intermediateBeyondAdd,
  keptDiffers,
  materialUnknown,
  nearImbalance,
  nearPdUnsaid,
  nearPdImplausible,
  nearPdWider,
  notForThisLens,
  oppositeSigns,
  pdHalvesDisagree,
  pdHalvesMissing,
  pdHalvesUneven,
  pdImplausible,
  pdMissing,
  powerUnsaid,
  prismAngleForBoth,
  prismBaseMissing,
  prismOneSided,
  prismRelative,
  prismRepeated,
  prismUnusual,
  quarterStep,
  rxDiffers,
  safetyLens,
  segmentUnsaid,
  slabForBoth,
  slabSide,
  supplyUnsaid,
  thinningUnsaid,
  tiltMatters,
  tintDepthMissing,
  unusualValue,
  upperSegmentUnordered,
  useMissing,
  usePowerMissing,
  verificationDiffers,
  vertexMatters,
  vertexUnsaid,
];
