/** What a reading says of how a pair is placed: by the places of its lenses, by their prism, or by both. */
import type { Eye } from '../../grammar';
import { imbalance, type PrismVector, prismBeforeEye, toMatrix } from '../../optics';
import { attempt } from '../attempt';
import { isSame, tidy } from '../exact';
import { plainLimit, type Unit } from '../limits';
import { EYES, type Order, type PerEye, type PrismPart } from '../model';
import { placingPd } from '../placing-pd';
import type { Read, ReadValues } from '../reduce';
import type { Step } from '../step';
import { atOddsWithPrism } from './distance-and-prism';
import { type Case, classOfPair, type From } from './measure';
import { type Along, acrossAsRead, distancesRead, heightsAsRead, isOfEach } from './places';
import { powerInPlace, prismsAt, prismsOfPlaces } from './prism-of-places';
import { together } from './sums';
import { prismRead, unwantedIn } from './wanted-prism';

/** Prism of a pair: base in counted over both eyes, or base up before the right eye. */
export type Component = 'horizontal' | 'vertical';

/** An error of place or prism, in whichever unit it was found. */
export interface Found {
  readonly from: From;
  /** Signed, millimetres; null where only prism is known. */
  readonly mm: number | null;
  /** Signed, prism dioptres; null where it cannot be worked out. */
  readonly prism: number | null;
  /** Unwanted prism of each lens, where prism was read and no place is known. */
  readonly lenses: PerEye<PrismVector> | null;
  readonly ordered: number | null;
  readonly read: number | null;
  readonly eye: Eye | null;
  readonly because: string | null;
  readonly coarse: boolean;
  /** The error of each repeat, in millimetres and in prism dioptres. */
  readonly all: readonly { readonly mm: number | null; readonly prism: number | null }[];
  readonly steps: readonly Step[];
}

export const NOTHING_FOUND = {
  mm: null,
  prism: null,
  lenses: null,
  ordered: 0,
  read: null,
  eye: null,
  because: null,
  coarse: false,
} as const;

/**
 * What is known of the pair along one direction: by the places of the lenses, by their prism, or by both. Where prism
 * decides and was read in both lenses, it says how they stand, and a mere sum beside it says less; so does a place of which
 * only one direction is known, in a lens with an oblique cylinder.
 * @param unit in which the set judges that direction
 */
export function pairFound(one: Case, component: Component, unit: Unit, places: Along | null): Found[] {
  const { order, values, set } = one;
  const prism = unwantedPrism(order, values, component);
  const found = prism ? [prism] : [];
  // Prism of a progressive is that of its mark, and says nothing of where the mark stands.
  const isOfPlace = prism !== null && classOfPair(order) !== 'progressive';
  const saysLess = isOfPlace && unit === 'prism' && (!places || saysLessThanPrism(one, component, places));
  if (places && !saysLess && !isJudgedAsPlace(order, set)) found.unshift(byPlaces(one, component, places));
  return found;
}

/** A sum does, unless it is at odds with the prism: then both are judged, and the worse one stands. */
function saysLessThanPrism(one: Case, component: Component, places: Along): boolean {
  if (!isOfEach(places)) return component === 'vertical' || atOddsWithPrism(one.order, one.values, places) === null;
  return isSkew(one, component);
}

/** Whether a displacement the other way, of which nothing was read, would make prism in this direction as well. */
function isSkew({ order, values }: Case, component: Component): boolean {
  const other = component === 'horizontal' ? heightsAsRead(order, values) : acrossAsRead(order, values);
  if (other) return false;
  return EYES.some((eye) => {
    const power = powerInPlace(order, values, order.lenses[eye]);
    return power !== null && Math.abs(attempt(() => toMatrix(power).xy) ?? 0) > SKEW;
  });
}

/** Dioptres: a millimetre less than this makes no hundredth of a prism dioptre. */
const SKEW = 0.05;

/** The marks of a progressive stand in millimetres before each eye; prism is read at the mark, wherever that stands. */
const isJudgedAsPlace = (order: Order, set: Case['set']): boolean =>
  classOfPair(order) === 'progressive' && plainLimit(set, 'fittingHorizontal') !== null;

function byPlaces({ order, values }: Case, component: Component, places: Along): Found {
  const [across, upwards] =
    component === 'horizontal' ? [places, heightsAsRead(order, values)] : [acrossAsRead(order, values), places];
  const prisms = prismsOfPlaces(order, values, across, upwards);
  const worstOf = prisms && worstImbalance(prisms, component);
  const { from, error, ordered, repeats } = places;
  const all = repeats.map((repeat) => ({
    mm: repeat.error,
    prism: prismOfRepeat(repeat, worstOf?.prism ?? null, error),
  }));
  return {
    from,
    mm: places.ofCentres ? null : error,
    prism: worstOf?.prism ?? null,
    lenses: places.ofCentres ? (worstOf?.lenses ?? null) : null,
    ordered,
    read: from.value,
    eye: null,
    because: prisms && !isOfEach(places) && differ(prisms, component) ? 'worst-split' : null,
    coarse: from.coarse,
    all,
    steps: worstOf ? [...from.steps, ...inEachLens(worstOf.lenses, component)] : from.steps,
  };

  function prismOfRepeat(repeat: Along['repeats'][number], prism: number | null, of: number): number | null {
    if (prism === null) return null;
    if (!repeat.each) return of === 0 ? 0 : tidy((prism * repeat.error) / of);
    const other = { R: upwards?.ways[0]?.R ?? 0, L: upwards?.ways[0]?.L ?? 0 };
    const beside = { R: across?.ways[0]?.R ?? 0, L: across?.ways[0]?.L ?? 0 };
    const isAcross = component === 'horizontal';
    const made = prismsAt(
      order,
      values,
      isAcross ? repeat.each : beside,
      isAcross ? other : repeat.each,
      across?.ofCentres ?? false,
    );
    return made && tidy(imbalance(made.R, made.L)[component]);
  }
}

interface Imbalance {
  readonly prism: number;
  readonly lenses: PerEye<PrismVector>;
}

function worstImbalance(prisms: readonly PerEye<PrismVector>[], component: Component): Imbalance | null {
  let found: Imbalance | null = null;
  for (const lenses of prisms) {
    const prism = attempt(() => tidy(imbalance(lenses.R, lenses.L)[component]));
    if (prism === null) return null;
    if (!found || Math.abs(prism) > Math.abs(found.prism)) found = { prism, lenses };
  }
  return found;
}

/** Whether it matters in which lens the error lies. */
function differ(prisms: readonly PerEye<PrismVector>[], component: Component): boolean {
  const sizes = prisms.map(({ R, L }) => attempt(() => Math.abs(imbalance(R, L)[component])) ?? 0);
  return !isSame(Math.min(...sizes), Math.max(...sizes));
}

/** What each lens makes of its place, where there is anything to show. */
function inEachLens({ R, L }: PerEye<PrismVector>, component: Component): readonly Step[] {
  const part = component === 'horizontal' ? 'in' : 'up';
  const [right, left] = [tidy(prismBeforeEye(R, 'R')[part]), tidy(prismBeforeEye(L, 'L')[part])];
  if (right === 0 && left === 0) return [];
  return [stepOf(component, right, left, tidy(component === 'horizontal' ? right + left : right - left))];
}

const stepOf = (component: Component, right: number, left: number, result: number): Step => ({
  step: component === 'horizontal' ? 'sum' : 'less',
  of: component === 'horizontal' ? 'base-in' : 'base-up',
  right,
  left,
  result,
  unit: 'prism',
});

/** Unwanted prism of the pair as read: the prism of each lens less the ordered one, then the difference of the two. */
function unwantedPrism(order: Order, values: ReadValues, component: Component): Found | null {
  const parts = component === 'horizontal' ? HORIZONTAL : VERTICAL;
  const right = prismRead(order, values, 'R', parts);
  const left = right && prismRead(order, values, 'L', parts);
  return left && unwantedOf(order, right, left, component);
}

const HORIZONTAL: readonly PrismPart[] = ['right'];
const VERTICAL: readonly PrismPart[] = ['up'];

function unwantedOf(
  order: Order,
  right: Read<PrismVector>,
  left: Read<PrismVector>,
  component: Component,
): Found | null {
  const lenses = (a: PrismVector, b: PrismVector): PerEye<PrismVector> => ({
    R: unwantedIn(a, order, 'R'),
    L: unwantedIn(b, order, 'L'),
  });
  const of = (a: PrismVector, b: PrismVector): number => {
    const { R, L } = lenses(a, b);
    return imbalance(R, L)[component];
  };
  const part = component === 'horizontal' ? 'in' : 'up';
  const way = (a: PrismVector, b: PrismVector, result: number): Step => {
    const { R, L } = lenses(a, b);
    return stepOf(component, tidy(prismBeforeEye(R, 'R')[part]), tidy(prismBeforeEye(L, 'L')[part]), result);
  };
  const read = attempt(() => together(right, left, of, way));
  if (!read) return null;
  const all = read.all.map((prism) => ({ mm: null, prism }));
  return {
    ...NOTHING_FOUND,
    from: read,
    prism: read.value,
    lenses: lenses(right.value, left.value),
    all,
    steps: read.steps,
  };
}

/** Errors from the monocular distances; with only the sum read, the worst split is assumed: all of it in one lens. */
export function monocularErrors(order: Order, values: ReadValues): Found[] {
  const found: Found[] = [];
  for (const eye of EYES) {
    const ordered = placingPd(order).of[eye];
    const sources = [...distancesRead(order, values), values.figures['optical-centres']];
    const read = sources.find((source) => source?.[eye])?.[eye];
    if (ordered && read) found.push(displaced(read, ordered.value, eye));
  }
  if (found.length === 2) return found;
  const total = acrossAsRead(order, values);
  return total ? [displaced(total.from, total.ordered, null, 'worst-split')] : [];
}

const displaced = (from: Read<number>, ordered: number, eye: Eye | null, because: string | null = null): Found => ({
  from,
  mm: tidy(from.value - ordered),
  prism: null,
  lenses: null,
  ordered,
  read: from.value,
  eye,
  because,
  coarse: from.coarse,
  all: from.all.map((one) => ({ mm: tidy(one - ordered), prism: null })),
  steps: from.steps,
});

/** The prism of each lens that was read, by itself. */
export function prismOfEach(order: Order, values: ReadValues): readonly Found[] {
  return EYES.flatMap((eye) => {
    const read = prismRead(order, values, eye, HORIZONTAL);
    if (!read) return [];
    const error = (one: PrismVector): number => tidy(unwantedIn(one, order, eye).right);
    const all = read.all.map((one) => ({ mm: null, prism: error(one) }));
    return [{ ...NOTHING_FOUND, from: read, prism: error(read.value), eye, all, steps: read.steps }];
  });
}
