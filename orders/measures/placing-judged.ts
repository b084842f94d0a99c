/** Holds the errors of a pair's placing against the limit of its set, in prism dioptres or in millimetres. */
import type { Eye } from '../../grammar';
import { imbalance, type PrismVector, prismBeforeEye } from '../../optics';
import { isLess, tidy } from '../exact';
import type { PairLimit } from '../limits';
import { EYES, type PerEye, type PrismPart } from '../model';
import type { GuardBand } from '../uncertainty';
import { held, judge, repeated } from './judge';
import { type Case, classOfPair, type Measure } from './measure';
import { orderedDistance } from './places';
import { type Component, type Found, NOTHING_FOUND } from './placing-found';
import { placeOfPrism, powerInPlace } from './prism-of-places';
import { isShareOrdered } from './split-prism';
import { prismRead, unwantedIn } from './wanted-prism';

/** What a found error is held against. */
export interface Ruling {
  readonly one: Case;
  readonly component: Component;
  /** Power of the stronger lens along the direction of the error, dioptres. */
  readonly power: number;
  readonly limit: PairLimit;
  readonly guard: GuardBand;
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
export function worst(
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

/**
 * Each lens against its own share, where the order says how the prism is shared. No set seen limits it: it is held to the
 * limit of the pair. Common practice, no source.
 */
export function sharesOfEach(one: Case, ruling: Ruling, quantity: 'prism-horizontal' | 'prism-vertical'): Measure[] {
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
