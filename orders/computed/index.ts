/** What is worked out from an order alone. */
import type { Eye } from '../../grammar';
import { attempt } from '../attempt';
import type { Order } from '../model';
import { bodyOf } from './body';
import type { Case } from './case';
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
  if (order.lenses[eye].role === 'absent') return [];
  const one = caseOf(order, eye);
  return OF_LENS.flatMap((figure) => attempt(() => figure(one)) ?? []);
}

/** What `vertical-imbalance` shows, for whoever judges it. */
export const readingImbalance = (order: Order): ReturnType<typeof imbalanceAtReading> =>
  attempt(() => imbalanceAtReading(pairOf(order)));

/** How much too strong an add of this lens comes out with the back surface on the stop, dioptres. */
export const addErrorFromBack = (order: Order, eye: Eye): Known<number> | null => backSurfaceError(caseOf(order, eye));

/** Drum positions with the front surface on the stop, where the order says enough of the body of the lens. */
export const drumFromFront = (order: Order, eye: Eye): Worked | null =>
  attempt(() => drumInSegment(caseOf(order, eye)));

const pairOf = (order: Order): Pair => ({ R: caseOf(order, 'R'), L: caseOf(order, 'L') });

/** All figures of the pair. */
export function workedPair(order: Order): readonly Worked[] {
  const pair = pairOf(order);
  if (pair.R.lens.role === 'absent' || pair.L.lens.role === 'absent') return [];
  return OF_PAIR.flatMap((figure) => attempt(() => figure(pair)) ?? []);
}

/** The body of a lens has to be solved for and several figures rest on it, so it is worked out once, when first asked for. */
function caseOf(order: Order, eye: Eye): Case {
  let body: ReturnType<typeof bodyOf> | undefined;
  const one: Case = {
    order,
    lens: order.lenses[eye],
    eye,
    body: () => {
      if (body === undefined) body = bodyOf(one);
      return body;
    },
  };
  return one;
}
