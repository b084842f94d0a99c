/** The prism each lens is ordered with, and what it has beyond that. */
import type { Eye } from '../../grammar';
import type { PrismVector } from '../../optics';
import { tidy } from '../exact';
import { EYES, type Order, type OrderedLens, type PrismPart } from '../model';
import type { Read, ReadValues } from '../reduce';
import { classOfLens } from './measure';
import { sharedPrism } from './split-prism';

/** What a lens is to show at its reference point: its share of the ordered prism and the thinning that goes with it; what the maker says a focimeter will show holds as it stands. */
export function orderedPrism(order: Order, eye: Eye): PrismVector {
  const lens = order.lenses[eye];
  if (lens.verification?.prism) return lens.verification.prism.value;
  const { right, up } = sharedPrism(order, eye);
  return { right, up: up + (lens.thinning?.value ?? 0) };
}

const BOTH_PARTS: readonly PrismPart[] = ['right', 'up'];

/**
 * Prism as read where it counts. On a progressive it counts at the prism point only: a few millimetres higher it is
 * another figure. A part that was not mentioned is 0, unless one was ordered: then it was not read.
 * @param parts the parts that are asked for
 */
export function prismRead(order: Order, values: ReadValues, eye: Eye, parts = BOTH_PARTS): Read<PrismVector> | null {
  const read = values.prism[eye] ?? readElsewhere(order.lenses, values, eye);
  if (!read?.unsaid) return read;
  const isMissing = (part: PrismPart): boolean => parts.includes(part) && tidy(orderedPrism(order, eye)[part]) !== 0;
  return read.unsaid.some(isMissing) ? null : read;
}

function readElsewhere(lenses: Order['lenses'], values: ReadValues, eye: Eye): Read<PrismVector> | null {
  const isProgressive = EYES.some((side) => classOfLens(lenses[side]) === 'progressive');
  return isProgressive ? null : (values.prismElsewhere[eye] ?? null);
}

export const unwantedIn = (prism: PrismVector, order: Order, eye: Eye): PrismVector => {
  const wanted = orderedPrism(order, eye);
  return { right: prism.right - wanted.right, up: prism.up - wanted.up };
};

/**
 * Vertical prism that both lenses have in common, prism dioptres, where thinning is usual and nothing is said of it:
 * makers thin progressives and full-width segments by equal prism, which is no error. Zero elsewhere.
 */
export function unsaidThinning(order: Order, right: PrismVector, left: PrismVector): number {
  const isUsual = EYES.every((eye) => isThinned(order.lenses[eye]));
  const [a, b] = [unwantedIn(right, order, 'R').up, unwantedIn(left, order, 'L').up];
  if (!isUsual || a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}

const isThinned = (lens: OrderedLens): boolean =>
  lens.thinning === null &&
  !lens.verification?.prism &&
  (classOfLens(lens) === 'progressive' || lens.design?.value.shape === 'full-width');
