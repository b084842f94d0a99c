/**
 * How the pair is placed before the eyes: the unwanted prism it makes, in millimetres or in prism dioptres as the
 * tolerance set asks. One displaced centre is one measure, with the other unit beside it.
 */
import type { Eye } from '../../grammar';
import { imbalance, type PrismVector, powerAt, prismBeforeEye } from '../../optics';
import type { LensClass } from '../../tables';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { type PairLimit, pairLimit } from '../limits';
import { EYES, type Order, type OrderedLens, type PrismPart } from '../model';
import { placingPd } from '../placing-pd';
import { powerToMake } from '../power-to-make';
import type { Read, ReadValues } from '../reduce';
import type { Step } from '../step';
import type { GuardBand } from '../uncertainty';
import { held, judge, repeated } from './judge';
import { type Case, classOfLens, type From, type Measure, notRead, type Subject } from './measure';
import { differenceOf, sumOf, together } from './sums';
import { orderedPrism, prismRead, unwantedIn } from './wanted-prism';

/** An error of place or prism, in whichever unit it was found. */
interface Found {
  readonly from: From;
  /** Signed, millimetres; null where only prism is known. */
  readonly mm: number | null;
  readonly prism: number | null;
  readonly ordered: number | null;
  readonly read: number | null;
  readonly eye: Eye | null;
  readonly because: string | null;
  readonly coarse: boolean;
  /** The error of each repeat, in the unit it was found in. */
  readonly all: readonly number[];
}

export function placingMeasures(one: Case): Measure[] {
  const { order } = one;
  // One lens alone has no place, and an eye with a balance lens does not work with the other one.
  if (order.supply !== 'glazed' || !EYES.every((eye) => worksWithOther(order.lenses[eye]))) return [];
  const [along, across] = [strongestAlong(order, 180), strongestAlong(order, 90)];
  return along === null || across === null ? [] : [...horizontal(one, along), ...vertical(one, across)];
}

const worksWithOther = ({ role }: OrderedLens): boolean => role === 'made' || role === 'kept';

/** The larger absolute power of the pair along a direction: the lens in which an error of place does most. */
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

function horizontal(one: Case, power: number): Measure[] {
  const { order, values, set } = one;
  const limit = pairLimit(set, pairClass(order), 'horizontal', power, largestOrdered(order, 'right'));
  if (!limit) return [];
  const eachEye = limit.judged === 'monocular-pd';
  const found = eachEye ? monocularErrors(order, values) : pairError(order, values);
  if (eachEye) found.push(...prismOfEach(order, values));
  else {
    const prism = unwantedPrism(order, values, 'horizontal');
    if (prism) found.push(prism);
  }
  const missing: Subject = { quantity: limit.unit === 'mm' ? 'pd' : 'prism-horizontal', eye: null, unit: limit.unit };
  if (found.length === 0) return [notRead(missing, limit.unit === 'mm' ? orderedPd(order) : 0)];
  const measures = worst(found, { power, limit, guard: one.guard }, 'prism-horizontal', 'pd');
  if (!eachEye) return measures;
  const isCovered = (eye: Eye): boolean => measures.some((measure) => measure.eye === null || measure.eye === eye);
  const without = EYES.filter((eye) => !isCovered(eye));
  return [...measures, ...without.map((eye) => notRead({ ...missing, eye }, placingPd(order).of[eye]?.value ?? null))];
}

/** Where each lens is to stand before its own eye, so is its prism judged by itself. */
function prismOfEach(order: Order, values: ReadValues): readonly Found[] {
  return EYES.flatMap((eye) => {
    const read = prismRead(order, values, eye, HORIZONTAL);
    if (!read) return [];
    const errors = read.all.map((one) => tidy(unwantedIn(one, order.lenses[eye]).right));
    const prism = tidy(unwantedIn(read.value, order.lenses[eye]).right);
    return [{ from: read, mm: null, prism, ordered: 0, read: null, eye, because: null, coarse: false, all: errors }];
  });
}

function vertical(one: Case, power: number): Measure[] {
  const { order, values, set } = one;
  const limit = pairLimit(set, pairClass(order), 'vertical', power, largestOrdered(order, 'up'));
  if (!limit) return [];
  const found: Found[] = [];
  const heights = heightsPlaceCentres(order) ? heightError(order, values) : null;
  if (heights) found.push(heights);
  const prism = unwantedPrism(order, values, 'vertical');
  if (prism) found.push(prism);
  if (found.length === 0) return [notRead({ quantity: 'prism-vertical', eye: null, unit: 'prism' }, 0)];
  return worst(found, { power, limit, guard: one.guard }, 'prism-vertical', 'height-difference');
}

/** Both lenses of a pair are judged by the tables of the stricter placing: a progressive in either makes it one. */
const pairClass = ({ lenses: { R, L } }: Order): LensClass =>
  classOfLens(R) === 'progressive' || classOfLens(L) === 'progressive' ? 'progressive' : 'single-vision-multifocal';

const largestOrdered = ({ lenses: { R, L } }: Order, part: 'right' | 'up'): number =>
  Math.max(Math.abs(orderedPrism(R)[part]), Math.abs(orderedPrism(L)[part]));

function orderedPd(order: Order): number | null {
  const { binocular, R, L } = placingPd(order).of;
  return binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);
}

/** A pair for near may be read by either word: it has one distance between its centres. */
export const distancesRead = (order: Order, { figures }: ReadValues): readonly (Values | undefined)[] =>
  placingPd(order).isNear ? [figures['near-pd'], figures.pd] : [figures.pd];

type Values = NonNullable<ReadValues['figures']['pd']>;

/** Unwanted prism of the pair as read: the prism of each lens less the ordered one, then the difference of the two. */
function unwantedPrism(order: Order, values: ReadValues, component: 'horizontal' | 'vertical'): Found | null {
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
  component: 'horizontal' | 'vertical',
): Found | null {
  const { R, L } = order.lenses;
  const of = (a: PrismVector, b: PrismVector): number => imbalance(unwantedIn(a, R), unwantedIn(b, L))[component];
  const part = component === 'horizontal' ? 'in' : 'up';
  const way = (a: PrismVector, b: PrismVector, result: number): Step => ({
    step: component === 'horizontal' ? 'sum' : 'less',
    of: component === 'horizontal' ? 'base-in' : 'base-up',
    right: tidy(prismBeforeEye(unwantedIn(a, R), 'R')[part]),
    left: tidy(prismBeforeEye(unwantedIn(b, L), 'L')[part]),
    result,
    unit: 'prism',
  });
  const read = attempt(() => together(right, left, of, way));
  if (!read) return null;
  const { value: prism, all } = read;
  return { from: read, mm: null, prism, ordered: 0, read: null, eye: null, because: null, coarse: false, all };
}

/** Error of the distance between the points with the ordered prism, or of the optical centres where no prism is ordered. */
function pairError(order: Order, values: ReadValues): Found[] {
  const ordered = orderedPd(order);
  if (ordered === null) return [];
  for (const distances of distancesRead(order, values)) {
    const read = distanceOf(distances);
    if (read) return [displaced(read, ordered, null)];
  }
  const centres = distanceOf(values.figures['optical-centres']);
  const isPrismOrdered = EYES.some((eye) => orderedPrism(order.lenses[eye]).right !== 0);
  return centres && !isPrismOrdered ? [displaced(centres, ordered, null)] : [];
}

const distanceOf = (read: Values | undefined): Read<number> | null =>
  read?.pair ?? (read?.R && read.L ? sumOf(read.R, read.L) : null);

const displaced = (from: Read<number>, ordered: number, eye: Eye | null, because: string | null = null): Found => ({
  from,
  mm: tidy(from.value - ordered),
  prism: null,
  ordered,
  read: from.value,
  eye,
  because,
  coarse: from.coarse,
  all: from.all.map((one) => tidy(one - ordered)),
});

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
  return pairError(order, values).map((one) => ({ ...one, because: 'worst-split' }));
}

/** Heights say where the optical centres stand only in single vision; elsewhere they place a segment or a fitting point. */
const heightsPlaceCentres = (order: Order): boolean =>
  EYES.every((eye) => (order.lenses[eye].design?.value.type ?? 'single-vision') === 'single-vision');

function heightError(order: Order, values: ReadValues): Found | null {
  const [right, left] = [values.figures.height?.R, values.figures.height?.L];
  if (!right || !left) return null;
  const wanted = (eye: Eye): number => order.lenses[eye].height?.value ?? 0;
  const both = EYES.every((eye) => order.lenses[eye].height) || EYES.every((eye) => !order.lenses[eye].height);
  if (!both) return null;
  return displaced(differenceOf(right, left), tidy(wanted('R') - wanted('L')), null);
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
    const known = worstOf.get(eye);
    if (!known || excess(measure) > excess(known)) worstOf.set(eye, measure);
  }
  return [...worstOf.values()];
}

const excess = ({ deviation, limit }: Measure): number => Math.abs(deviation ?? 0) / (limit?.amount || 1);

function asPrism(one: Found, { power, limit, guard }: Ruling, eye: Eye | null, quantity: Measure['quantity']): Measure {
  const prism = one.prism ?? tidy((Math.abs(one.mm as number) / 10) * power);
  const amount = tidy((limit.amount as number) + (limit.shift / 10) * power);
  const figure = held(one.from, 0, Math.abs(prism), prism, amount === limit.amount ? limit : { ...limit, amount });
  figure.coarse = one.coarse;
  figure.all = repeated(one.all, (error) => {
    const each = one.prism === null ? tidy((error / 10) * power) : error;
    return { read: Math.abs(each), deviation: each };
  });
  if (one.mm !== null) figure.beside = { amount: one.mm, unit: 'mm' };
  figure.assumed = one.because;
  return judge({ quantity, eye, unit: 'prism' }, figure, guard);
}

function inMm(
  one: Found,
  ruling: Ruling,
  eye: Eye | null,
  quantity: Measure['quantity'],
  prismQuantity: Measure['quantity'],
): Measure {
  const { power, limit, guard } = ruling;
  if (one.mm === null) {
    // Only prism was read: the printed shift is turned into the prism it makes in the stronger lens.
    const amount = tidy(((limit.amount as number) / 10) * power);
    const inPrism = asPrism(
      one,
      { ...ruling, limit: { ...limit, amount, unit: 'prism', shift: 0 } },
      eye,
      prismQuantity,
    );
    return { ...inPrism, beside: { amount: tidy(((one.prism as number) / power) * 10), unit: 'mm' } };
  }
  const figure = held(one.from, one.ordered, one.read as number, one.mm, limit);
  figure.coarse = one.coarse;
  figure.all = repeated(one.all, (error) => ({ read: tidy((one.ordered ?? 0) + error), deviation: error }));
  figure.beside = { amount: tidy((Math.abs(one.mm) / 10) * power), unit: 'prism' };
  figure.assumed = one.because;
  return judge({ quantity, eye, unit: 'mm' }, figure, guard);
}

/** What a found error is held against. */
interface Ruling {
  /** Power of the stronger lens along the direction of the error, dioptres. */
  readonly power: number;
  readonly limit: PairLimit;
  readonly guard: GuardBand;
}
