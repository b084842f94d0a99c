/**
 * How the pair is placed before the eyes: the unwanted prism it makes, in millimetres or in prism dioptres as the
 * tolerance set asks. Each lens makes its own prism with its own power, from its own ordered place; by which word it was
 * read makes no difference. One displaced centre is one measure, with the other unit beside it.
 */
import type { Eye } from '../../grammar';
import { imbalance, type PrismVector, powerAt, prismBeforeEye, toMatrix } from '../../optics';
import { attempt } from '../attempt';
import { isLess, isSame, tidy } from '../exact';
import { type PairLimit, pairLimit, plainLimit } from '../limits';
import { EYES, type Order, type PerEye, type PrismPart } from '../model';
import { placingPd } from '../placing-pd';
import { powerToMake } from '../power-to-make';
import type { Read, ReadValues } from '../reduce';
import type { Step } from '../step';
import type { GuardBand } from '../uncertainty';
import { atOddsWithPrism } from './distance-and-prism';
import { held, judge, repeated } from './judge';
import { type Case, classOfPair, type From, type Measure, notRead, type Subject } from './measure';
import { type Along, acrossAsRead, distancesRead, heightsAsRead, isOfEach, orderedDistance } from './places';
import { placeOfPrism, powerInPlace, prismsAt, prismsOfPlaces } from './prism-of-places';
import { isShareOrdered } from './split-prism';
import { together } from './sums';
import { orderedPrism, prismRead, unwantedIn } from './wanted-prism';

/** Prism of a pair: base in counted over both eyes, or base up before the right eye. */
type Component = 'horizontal' | 'vertical';

/** An error of place or prism, in whichever unit it was found. */
interface Found {
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

export function placingMeasures(one: Case): Measure[] {
  const { order } = one;
  // One lens alone has no place, and an eye with a balance lens does not work with the other one.
  if (order.supply !== 'glazed' || !EYES.every((eye) => worksWithOther(order.lenses[eye]))) return [];
  const [along, across] = [strongestAlong(order, 180), strongestAlong(order, 90)];
  return along === null || across === null ? [] : [...horizontal(one, along), ...vertical(one, across)];
}

const worksWithOther = ({ role }: Order['lenses']['R']): boolean => role === 'made' || role === 'kept';

/** The larger absolute power of the pair along a direction, by which a set chooses the row of its limit. */
function strongestAlong(order: Order, meridian: number): number | null {
  let strongest: number | null = null;
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    const target = powerToMake(order, lens);
    const power = target?.kind === 'known' ? target.power : (lens.kept?.power?.value ?? null);
    const along = power && attempt(() => Math.abs(powerAt(power, meridian)));
    // The limit hangs on the stronger lens, and either may be the one whose power is not known.
    if (along === null) return null;
    strongest = Math.max(strongest ?? 0, along);
  }
  return strongest === null ? null : tidy(strongest);
}

/** Whether a set judges the horizontal place of a pair by its prism, and not in millimetres. */
export function isJudgedByPrism(order: Order, set: Case['set']): boolean {
  const power = strongestAlong(order, 180);
  if (power === null) return false;
  return pairLimit(set, classOfPair(order), 'horizontal', power, largestOrdered(order, 'right'))?.unit === 'prism';
}

function horizontal(one: Case, power: number): Measure[] {
  const { order, values, set, guard } = one;
  const limit = pairLimit(set, classOfPair(order), 'horizontal', power, largestOrdered(order, 'right'));
  if (!limit) return [];
  const ruling: Ruling = { one, power, limit, guard, component: 'horizontal' };
  const missing: Subject = { quantity: limit.unit === 'mm' ? 'pd' : 'prism-horizontal', eye: null, unit: limit.unit };
  if (limit.judged === 'monocular-pd') return eachPlaced(one, ruling, missing);
  const found = pairFound(ruling, acrossAsRead(order, values));
  if (found.length === 0) return [notRead(missing, limit.unit === 'mm' ? orderedDistance(order) : 0)];
  return [...worst(found, ruling, 'prism-horizontal', 'pd'), ...sharesOfEach(one, ruling, 'prism-horizontal')];
}

/** Where each lens is to stand before its own eye, so is its prism judged by itself. */
function eachPlaced(one: Case, ruling: Ruling, missing: Subject): Measure[] {
  const { order, values } = one;
  const found = [...monocularErrors(order, values), ...prismOfEach(order, values)];
  if (found.length === 0) return [notRead(missing, orderedDistance(order))];
  const measures = worst(found, ruling, 'prism-horizontal', 'pd');
  const isCovered = (eye: Eye): boolean => measures.some((measure) => measure.eye === null || measure.eye === eye);
  const without = EYES.filter((eye) => !isCovered(eye));
  return [...measures, ...without.map((eye) => notRead({ ...missing, eye }, placingPd(order).of[eye]?.value ?? null))];
}

function prismOfEach(order: Order, values: ReadValues): readonly Found[] {
  return EYES.flatMap((eye) => {
    const read = prismRead(order, values, eye, HORIZONTAL);
    if (!read) return [];
    const error = (one: PrismVector): number => tidy(unwantedIn(one, order, eye).right);
    const all = read.all.map((one) => ({ mm: null, prism: error(one) }));
    return [{ ...NOTHING_FOUND, from: read, prism: error(read.value), eye, all, steps: read.steps }];
  });
}

const NOTHING_FOUND = {
  mm: null,
  prism: null,
  lenses: null,
  ordered: 0,
  read: null,
  eye: null,
  because: null,
  coarse: false,
} as const;

function vertical(one: Case, power: number): Measure[] {
  const { order, values, set, guard } = one;
  const limit = pairLimit(set, classOfPair(order), 'vertical', power, largestOrdered(order, 'up'));
  if (!limit) return [];
  const ruling: Ruling = { one, power, limit, guard, component: 'vertical' };
  const found = pairFound(ruling, heightsAsRead(order, values));
  if (found.length === 0) return [notRead({ quantity: 'prism-vertical', eye: null, unit: 'prism' }, 0)];
  return [
    ...worst(found, ruling, 'prism-vertical', 'height-difference'),
    ...sharesOfEach(one, ruling, 'prism-vertical'),
  ];
}

const largestOrdered = (order: Order, part: 'right' | 'up'): number =>
  Math.max(Math.abs(orderedPrism(order, 'R')[part]), Math.abs(orderedPrism(order, 'L')[part]));

/**
 * What is known of the pair along one direction: by the places of the lenses, by their prism, or by both. Where prism
 * decides and was read in both lenses, it says how they stand, and a mere sum beside it says less; so does a place of which
 * only one direction is known, in a lens with an oblique cylinder.
 */
function pairFound({ one, component, limit }: Ruling, places: Along | null): Found[] {
  const { order, values, set } = one;
  const prism = unwantedPrism(order, values, component);
  const found = prism ? [prism] : [];
  // Prism of a progressive is that of its mark, and says nothing of where the mark stands.
  const isOfPlace = prism !== null && classOfPair(order) !== 'progressive';
  const saysLess = isOfPlace && limit.unit === 'prism' && (!places || saysLessThanPrism(one, component, places));
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
function monocularErrors(order: Order, values: ReadValues): Found[] {
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

/**
 * Each lens against its own share, where the order says how the prism is shared. No set seen limits it: it is held to the
 * limit of the pair. Common practice, no source.
 */
function sharesOfEach(one: Case, ruling: Ruling, quantity: 'prism-horizontal' | 'prism-vertical'): Measure[] {
  const { order, values } = one;
  const part: PrismPart = ruling.component === 'horizontal' ? 'right' : 'up';
  if (!isShareOrdered(order, part)) return [];
  return EYES.flatMap((eye) => {
    const read = prismRead(order, values, eye, [part]);
    if (!read) return [];
    const error = (prism: PrismVector): number => {
      const before = prismBeforeEye(unwantedIn(prism, order, eye), eye);
      return tidy(part === 'right' ? before.in : before.up);
    };
    const all = read.all.map((prism) => ({ mm: null, prism: error(prism) }));
    const found = {
      ...NOTHING_FOUND,
      from: read,
      prism: error(read.value),
      eye,
      because: 'own-share',
      all,
      steps: read.steps,
    };
    const measure = asPrism(found, inPrismOf(ruling), eye, quantity);
    return measure ? [measure] : [];
  });
}

/** A limit in millimetres as the prism it makes in the stronger lens. */
function inPrismOf(ruling: Ruling): Ruling {
  const { limit, power } = ruling;
  if (limit.unit !== 'mm') return ruling;
  return {
    ...ruling,
    limit: { ...limit, amount: tidy(((limit.amount as number) / 10) * power), unit: 'prism', shift: 0 },
  };
}

/** Judges every error found and keeps the worst; per eye where the limit counts each eye. */
function worst(
  found: readonly Found[],
  ruling: Ruling,
  inPrism: 'prism-horizontal' | 'prism-vertical',
  inMillimetres: 'pd' | 'height-difference',
): Measure[] {
  const { judged, unit } = ruling.limit;
  const worstOf = new Map<Eye | null, Measure>();
  for (const one of found) {
    const eye = judged === 'monocular-pd' || judged === 'reference-point-height' ? one.eye : null;
    const measure = unit === 'mm' ? inMm(one, ruling, eye, inMillimetres, inPrism) : asPrism(one, ruling, eye, inPrism);
    if (!measure) continue;
    const known = worstOf.get(eye);
    if (!known || excess(measure) > excess(known)) worstOf.set(eye, measure);
  }
  return [...worstOf.values()];
}

/** A measure that was not judged comes before any that was, and then the one that takes up most of its limit. */
const excess = ({ outcome, deviation, limit }: Measure): number =>
  outcome === 'not-judged' ? Number.POSITIVE_INFINITY : Math.abs(deviation ?? 0) / (limit?.amount || 1);

function asPrism({ ...one }: Found, ruling: Ruling, eye: Eye | null, quantity: Measure['quantity']): Measure | null {
  const { power, limit, guard } = ruling;
  if (one.prism === null && one.mm === null) return null;
  const inPrism = (mm: number): number => tidy((mm / 10) * power);
  const prism = one.prism ?? inPrism(one.mm as number);
  const amount = tidy((limit.amount as number) + (limit.shift / 10) * power);
  const figure = held(one.from, 0, Math.abs(prism), prism, amount === limit.amount ? limit : { ...limit, amount });
  figure.coarse = one.coarse;
  figure.steps = one.steps;
  figure.all = repeated(one.all, (error) => {
    const each = error.prism ?? inPrism(error.mm ?? 0);
    return { read: Math.abs(each), deviation: each };
  });
  if (one.mm !== null) figure.beside = { amount: one.mm, unit: 'mm' };
  figure.assumed = one.because;
  const measure = judge({ quantity, eye, unit: 'prism' }, figure, guard);
  return arePlacesApart(one) ? { ...measure, outcome: 'not-judged', because: 'spread' } : measure;
}

/**
 * Repeats of a place that differ by more than any two readings of one pair do, millimetres. In weak lenses they make next
 * to no prism, and all the same one of them is wrong. Common practice, no source.
 */
const MOST_APART = 2.5;

function arePlacesApart({ all }: Found): boolean {
  const places = all.flatMap(({ mm }) => mm ?? []);
  return places.length > 1 && isLess(MOST_APART, Math.max(...places) - Math.min(...places));
}

function inMm(
  one: Found,
  ruling: Ruling,
  eye: Eye | null,
  quantity: 'pd' | 'height-difference',
  prismQuantity: Measure['quantity'],
): Measure | null {
  const { power, limit, guard } = ruling;
  if (one.mm === null) {
    const isMark = classOfPair(ruling.one.order) === 'progressive';
    const moved = isMark || !one.lenses ? null : movedApart(one.lenses, ruling);
    return moved === null
      ? strongestPrism(one, ruling, eye, prismQuantity)
      : apartByPrism(one, moved, ruling, quantity, prismQuantity);
  }
  const figure = held(one.from, one.ordered, one.read as number, one.mm, limit);
  figure.coarse = one.coarse;
  figure.all = repeated(one.all, ({ mm }) => ({ read: tidy((one.ordered ?? 0) + (mm ?? 0)), deviation: mm ?? 0 }));
  figure.beside = { amount: tidy(Math.abs(one.prism ?? (one.mm / 10) * power)), unit: 'prism' };
  // A sum of millimetres is judged as it is; in which lens it lies would only matter for each by itself.
  figure.assumed = limit.judged === 'monocular-pd' ? one.because : null;
  return judge({ quantity, eye, unit: 'mm' }, figure, guard);
}

/** The printed shift is turned into the prism it makes in the stronger lens. */
function strongestPrism(one: Found, ruling: Ruling, eye: Eye | null, quantity: Measure['quantity']): Measure | null {
  const measure = asPrism(one, inPrismOf(ruling), eye, quantity);
  return measure && { ...measure, beside: { amount: tidy(((one.prism as number) / ruling.power) * 10), unit: 'mm' } };
}

/**
 * Prism that was read where millimetres decide. It is shown as prism, against what a displacement as large as the limit
 * makes in these lenses; but prism of two lenses may cancel while they stand far apart, and then only millimetres show it.
 */
function apartByPrism(
  one: Found,
  moved: number,
  ruling: Ruling,
  quantity: 'pd' | 'height-difference',
  prismQuantity: Measure['quantity'],
): Measure | null {
  const { limit, guard } = ruling;
  const most = limit.amount as number;
  const prism = Math.abs(one.prism ?? 0);
  const inStronger = inPrismOf(ruling);
  const amount = moved === 0 ? (inStronger.limit.amount as number) : tidy((prism * most) / Math.abs(moved));
  if (!isLess(amount, (inStronger.limit.amount as number) / 8)) {
    const measure = asPrism(one, { ...inStronger, limit: { ...inStronger.limit, amount } }, null, prismQuantity);
    return measure && { ...measure, beside: { amount: moved, unit: 'mm' } };
  }
  const ordered = orderedApart(ruling);
  const figure = held(one.from, ordered, ordered + moved, moved, limit);
  figure.coarse = one.coarse;
  figure.steps = one.steps;
  figure.assumed = 'from-prism';
  figure.beside = { amount: prism, unit: 'prism' };
  return judge({ quantity, eye: null, unit: 'mm' }, figure, guard);
}

/**
 * How much too far the two lenses stand apart by the prism they make, or how much too high the right one, millimetres.
 * Prism that no place of its own lens explains counts as if it came of the stronger lens.
 */
function movedApart(prisms: PerEye<PrismVector>, { one, component, power }: Ruling): number | null {
  const { order, values } = one;
  const moved = EYES.map((eye) => {
    const lens = powerInPlace(order, values, order.lenses[eye]);
    return lens && placeOfPrism(lens, prisms[eye]);
  });
  const [R, L] = moved;
  if (!R || !L) return null;
  const apart = component === 'horizontal' ? L.moved.right - R.moved.right : R.moved.up - L.moved.up;
  const rest = imbalance(R.rest, L.rest)[component];
  return tidy(Math.sign(apart || rest) * (Math.abs(apart) + (Math.abs(rest) / power) * 10));
}

function orderedApart({ one: { order }, component }: Ruling): number {
  if (component === 'horizontal') return orderedDistance(order) ?? 0;
  return tidy((order.lenses.R.height?.value ?? 0) - (order.lenses.L.height?.value ?? 0));
}

/** What a found error is held against. */
export interface Ruling {
  readonly one: Case;
  readonly component: Component;
  /** Power of the stronger lens along the direction of the error, dioptres. */
  readonly power: number;
  readonly limit: PairLimit;
  readonly guard: GuardBand;
}
