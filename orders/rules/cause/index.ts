import { addMisread } from './add-misread';
import { axisCrossed } from './axis-crossed';
import { baseCurveIndex } from './base-curve-index';
import { baseReversed } from './base-reversed';
import { bothCentresOff } from './both-centres-off';
import type { Cause } from './cause';
import { compensationMixed } from './compensation-mixed';
import { cutOffAxis } from './cut-off-axis';
import { edgedOffAxis } from './edged-off-axis';
import { eyesSwapped } from './eyes-swapped';
import { formMisread } from './form-misread';
import { heightsShifted } from './heights-shifted';
import { heightsSwapped } from './heights-swapped';
import { lensReversed } from './lens-reversed';
import { lensTurned } from './lens-turned';
import { linesSwapped } from './lines-swapped';
import { nearDistanceSwapped } from './near-distance-swapped';
import { nearForDistance } from './near-for-distance';
import { oneCentreOff } from './one-centre-off';
import { otherAddBlank } from './other-add-blank';
import { otherSegment } from './other-segment';
import { prismFromPlace } from './prism-from-place';
import { signFlipped } from './sign-flipped';
import { surfacedOffAxis } from './surfaced-off-axis';
import { thinningAsError } from './thinning-as-error';
import { warpedInMounting } from './warped-in-mounting';

/** What probably happened, where something is outside. */
export const CAUSES: readonly Cause[] = [
  addMisread,
  axisCrossed,
  baseCurveIndex,
  baseReversed,
  bothCentresOff,
  compensationMixed,
  cutOffAxis,
  edgedOffAxis,
  eyesSwapped,
  formMisread,
  heightsShifted,
  heightsSwapped,
  lensReversed,
  lensTurned,
  linesSwapped,
  nearDistanceSwapped,
  nearForDistance,
  oneCentreOff,
  otherAddBlank,
  otherSegment,
  prismFromPlace,
  signFlipped,
  surfacedOffAxis,
  thinningAsError,
  warpedInMounting,
];
