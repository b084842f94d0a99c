import type { Rule } from '../rule';
import { addOutside } from './add-outside';
import { axisOutside } from './axis-outside';
import { baseCurveOutside } from './base-curve-outside';
import { cosmeticFailed } from './cosmetic-failed';
import { cylinderOutside } from './cylinder-outside';
import { heightDifferenceOutside } from './height-difference-outside';
import { heightOutside } from './height-outside';
import { impactFailed } from './impact-failed';
import { nearPdOutside } from './near-pd-outside';
import { pdOutside } from './pd-outside';
import { powerOutside } from './power-outside';
import { prismOutside } from './prism-outside';
import { segmentOutside } from './segment-outside';
import { thicknessOutside } from './thickness-outside';
import { warpOutside } from './warp-outside';

/** Readings that are outside their limit. */
export const TOLERANCE: readonly Rule[] = [
  addOutside,
  axisOutside,
  baseCurveOutside,
  cosmeticFailed,
  cylinderOutside,
  heightDifferenceOutside,
  heightOutside,
  impactFailed,
  nearPdOutside,
  pdOutside,
  powerOutside,
  prismOutside,
  segmentOutside,
  thicknessOutside,
  warpOutside,
];
