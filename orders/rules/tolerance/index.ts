import type { Rule } from '../rule';
import { addOutside } from './add-outside';
import { axisOutside } from './axis-outside';
import { baseCurveOutside } from './base-curve-outside';
import { cosmeticFailed } from './cosmetic-failed';
import { cylinderOutside } from './cylinder-outside';
import { heightDifferenceOutside } from './height-difference-outside';
import { heightOutside } from './height-outside';
import { houseBaseMissing } from './house-base-missing';
import { houseLimit } from './house-limit';
import { houseLimitImpossible } from './house-limit-impossible';
import { houseLooser } from './house-looser';
import { impactFailed } from './impact-failed';
import { markingFailed } from './marking-failed';
import { nearPdOutside } from './near-pd-outside';
import { pdOutside } from './pd-outside';
import { powerOutside } from './power-outside';
import { prismOutside } from './prism-outside';
import { segmentOutside } from './segment-outside';
import { slabOutside } from './slab-outside';
import { thicknessOutside } from './thickness-outside';
import { warpOutside } from './warp-outside';

/** Readings that are outside their limit, and sets that have none. */
export const TOLERANCE: readonly Rule[] = [
  addOutside,
  axisOutside,
  baseCurveOutside,
  cosmeticFailed,
  cylinderOutside,
  heightDifferenceOutside,
  heightOutside,
  houseBaseMissing,
  houseLimit,
  houseLimitImpossible,
  houseLooser,
  impactFailed,
  markingFailed,
  nearPdOutside,
  pdOutside,
  powerOutside,
  prismOutside,
  segmentOutside,
  slabOutside,
  thicknessOutside,
  warpOutside,
];
