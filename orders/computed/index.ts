/** What is worked out from an order alone. */
import type { Eye } from '../../grammar';
import { attempt, attemptOf } from '../attempt';
import type { Order } from '../model';
import { type Case, casesOf } from './case';
import { addError, backSurfaceError, drum, drumInSegment } from './drum-figures';
import type { Known, Worked } from './figure';
import { allInset, blank, decentration, drop, inset, nearInset, raise } from './layout-figures';
import {
  imageDifference,
  imbalanceAtReading,
  nearPd,
  type Pair,
  pairPrism,
  reverseSlab,
  slab,
  verticalImbalance,
} from './pair-figures';
import { baseCurve, digitalBaseCurve, magnification, mass, reflected, thickness } from './physical-figures';
import {
  equivalentSphere,
  forms,
  forVertex,
  intermediate,
  meridians,
  near,
  toMake,
  workingDistance,
} from './power-figures';
import { byDecentration, forPrism, onePrism } from './prism-figures';
import { colour, displacement, jump, ring } from './segment-figures';
import { centreHeight, forWear, worn, wrapPrism } from './wear-figures';

export type {
  Amount,
  Input,
  Inputs,
  Known,
  Origin,
  Refusal,
  Worked,
  WorkedCode,
  WorkedUnit,
  WorkedValue,
} from './figure';
export { type ComputedLens, computeLens } from './lens';

/** In the order in which they are shown. */
const OF_LENS: readonly ((one: Case) => Worked | null)[] = [
  forms,
  meridians,
  equivalentSphere,
  near,
  intermediate,
  toMake,
  forVertex,
  drum,
  workingDistance,
  decentration,
  raise,
  blank,
  drop,
  inset,
  nearInset,
  allInset,
  onePrism,
  byDecentration,
  forPrism,
  jump,
  displacement,
  drumInSegment,
  ring,
  addError,
  worn,
  forWear,
  wrapPrism,
  centreHeight,
  thickness,
  mass,
  baseCurve,
  digitalBaseCurve,
  magnification,
  colour,
  reflected,
];

const OF_PAIR: readonly ((pair: Pair) => Worked | null)[] = [
  nearPd,
  pairPrism,
  verticalImbalance,
  slab,
  reverseSlab,
  imageDifference,
];

/** All figures of one lens that the order says enough for. Never throws; a figure whose inputs are out of range is left out. */
export function workedLens(order: Order, eye: Eye): readonly Worked[] {
  const one = casesOf(order)[eye];
  return one.lens.role === 'absent' ? [] : allOf(OF_LENS, one);
}

/** What `vertical-imbalance` shows, for whoever judges it. */
export const readingImbalance = (order: Order): ReturnType<typeof imbalanceAtReading> =>
  attemptOf(imbalanceAtReading, order);

/** How much too strong an add of this lens comes out with the back surface on the stop, dioptres. */
export const addErrorFromBack = (order: Order, eye: Eye): Known<number> | null => backSurfaceError(casesOf(order)[eye]);

/** Drum positions with the front surface on the stop, where the order says enough of the body of the lens. */
export const drumFromFront = (order: Order, eye: Eye): Worked | null =>
  attempt(() => drumInSegment(casesOf(order)[eye]));

/** All figures of the pair. */
export function workedPair(order: Order): readonly Worked[] {
  const pair = casesOf(order);
  return pair.R.lens.role === 'absent' || pair.L.lens.role === 'absent' ? [] : allOf(OF_PAIR, pair);
}

function allOf<Of>(figures: readonly ((of: Of) => Worked | null)[], of: Of): readonly Worked[] {
  const all: Worked[] = [];
  for (const figure of figures) {
    const worked = attempt(() => figure(of));
    if (worked) all.push(worked);
  }
  return all;
}
