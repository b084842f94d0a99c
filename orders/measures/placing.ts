/**
 * How the pair is placed before the eyes: the unwanted prism it makes, in millimetres or in prism dioptres as the
 * tolerance set asks. One displaced centre is one measure, with the other unit beside it.
 */
import type { Eye } from '../../grammar';
import { imbalance, type PrismVector, powerAt } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { lensClassOf, type PairLimit, pairLimit, plainLimit } from '../limits';
import { EYES, type Order, type OrderedLens } from '../model';
import { powerToMake } from '../power-to-make';
import type { Read, ReadValues } from '../reduce';
import type { GuardBand } from '../uncertainty';
import { type Case, figureAgainst, type Held, judge, type Measure, notRead, type Subject } from './measure';

type From = Pick<Read<unknown>, 'reading' | 'place' | 'steps' | 'coarse' | 'instrument'>;

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
}

export function placingMeasures(one: Case): Measure[] {
  const { order } = one;
  if (order.supply !== 'glazed' || EYES.some((eye) => order.lenses[eye].role === 'absent')) return [];
  const power = { horizontal: strongestAlong(order, 180), vertical: strongestAlong(order, 90) };
  if (power.horizontal === null || power.vertical === null) return [];
  return [...horizontal(one, power.horizontal), ...vertical(one, power.vertical)];
}

/** The larger absolute power of the pair along a direction: the lens in which an error of place does most. */
function strongestAlong(order: Order, meridian: number): number | null {
  let strongest: number | null = null;
  for (const eye of EYES) {
    const target = powerToMake(order, order.lenses[eye]);
    const along = target?.kind === 'known' ? attempt(() => Math.abs(powerAt(target.power, meridian))) : null;
    // The limit hangs on the stronger lens, and either may be the one whose power is not known.
    if (along === null) return null;
    strongest = Math.max(strongest ?? 0, along);
  }
  return strongest === null ? null : tidy(strongest);
}

const orderedPrism = (lens: OrderedLens): PrismVector =>
  (lens.verification?.prism ?? lens.prism)?.value ?? { right: 0, up: 0 };

function horizontal(one: Case, power: number): Measure[] {
  const { order, values, set } = one;
  const limit = pairLimit(set, pairClass(order), 'horizontal', power, largestOrdered(order, 'right'));
  if (!limit) return [];
  const prism = unwantedPrism(order, values, 'horizontal');
  const distances = limit.judged === 'monocular-pd' ? monocularErrors(order, values) : pairError(order, values);
  const found = [...distances, ...(prism ? [prism] : [])];
  const byEye = pairClass(order) === 'progressive' && limit.judged !== 'monocular-pd' ? fittingPlaces(one) : [];
  const missing: Subject = { quantity: limit.unit === 'mm' ? 'pd' : 'prism-horizontal', eye: null, unit: limit.unit };
  if (found.length === 0) return [notRead(missing, limit.unit === 'mm' ? orderedPd(order) : 0), ...byEye];
  return [...worst(found, { power, limit, guard: one.guard }, 'prism-horizontal', 'pd'), ...byEye];
}

/** The fitting points of progressives stand before each eye, whatever the power. */
function fittingPlaces({ order, values, set, guard }: Case): Measure[] {
  const limit = plainLimit(set, 'fittingHorizontal');
  if (!limit) return [];
  return EYES.flatMap((eye) => {
    const ordered = order.pd[eye];
    if (!ordered) return [];
    const subject = { quantity: 'pd', eye, unit: 'mm' } as const;
    const read = values.figures.pd?.[eye];
    if (!read) return [notRead(subject, ordered.value)];
    return [judge(subject, figureAgainst(ordered.value, read, limit), guard)];
  });
}

function vertical(one: Case, power: number): Measure[] {
  const { order, values, set } = one;
  const limit = pairLimit(set, pairClass(order), 'vertical', power, largestOrdered(order, 'up'));
  if (!limit) return [];
  const prism = unwantedPrism(order, values, 'vertical');
  const heights = heightsPlaceCentres(order) ? heightError(order, values) : null;
  const found = [...(heights ? [heights] : []), ...(prism ? [prism] : [])];
  if (found.length === 0) return [notRead({ quantity: 'prism-vertical', eye: null, unit: 'prism' }, 0)];
  return worst(found, { power, limit, guard: one.guard }, 'prism-vertical', 'height-difference');
}

/** Both lenses of a pair are judged by the tables of the stricter placing: a progressive in either makes it one. */
const pairClass = (order: Order): ReturnType<typeof lensClassOf> =>
  EYES.map((eye) => lensClassOf(order.lenses[eye].design?.value ?? null)).find((one) => one === 'progressive') ??
  'single-vision-multifocal';

const largestOrdered = (order: Order, part: 'right' | 'up'): number =>
  Math.max(...EYES.map((eye) => Math.abs(orderedPrism(order.lenses[eye])[part])));

function orderedPd({ pd }: Order): number | null {
  return pd.binocular?.value ?? (pd.R && pd.L ? tidy(pd.R.value + pd.L.value) : null);
}

/** On a progressive, prism counts at the prism point only: a few millimetres higher it is another figure. */
const isReadElsewhere = (order: Order, { at }: Read<PrismVector>): boolean =>
  pairClass(order) === 'progressive' && at !== null && at !== 'prism-point';

/** Unwanted prism of the pair as read: the prism of each lens less the ordered one, then the difference of the two. */
function unwantedPrism(order: Order, values: ReadValues, component: 'horizontal' | 'vertical'): Found | null {
  const [right, left] = [values.prism.R, values.prism.L];
  if (!right || !left || isReadElsewhere(order, right) || isReadElsewhere(order, left)) return null;
  const unwanted = (read: Read<PrismVector>, eye: Eye): PrismVector => {
    const want = orderedPrism(order.lenses[eye]);
    return { right: read.value.right - want.right, up: read.value.up - want.up };
  };
  const pair = attempt(() => imbalance(unwanted(right, 'R'), unwanted(left, 'L')));
  if (!pair) return null;
  const from = right.reading >= left.reading ? right : left;
  return {
    from: { ...from, coarse: false },
    mm: null,
    prism: tidy(pair[component]),
    ordered: 0,
    read: null,
    eye: null,
    because: null,
  };
}

/** Error of the distance between the points with the ordered prism, or of the optical centres where no prism is ordered. */
function pairError(order: Order, values: ReadValues): Found[] {
  const ordered = orderedPd(order);
  if (ordered === null) return [];
  const sums = EYES.some((eye) => orderedPrism(order.lenses[eye]).right !== 0)
    ? [values.figures.pd]
    : [values.figures.pd, values.figures['optical-centres']];
  for (const sum of sums) {
    const read = sum?.pair ?? (sum?.R && sum.L ? { ...sum.R, value: tidy(sum.R.value + sum.L.value) } : null);
    if (read)
      return [
        {
          from: read,
          mm: tidy(read.value - ordered),
          prism: null,
          ordered,
          read: read.value,
          eye: null,
          because: null,
        },
      ];
  }
  return [];
}

/** Errors from the monocular distances; with only the sum read, the worst split is assumed: all of it in one lens. */
function monocularErrors(order: Order, values: ReadValues): Found[] {
  const found: Found[] = [];
  for (const eye of EYES) {
    const ordered = order.pd[eye];
    const read = values.figures.pd?.[eye] ?? values.figures['optical-centres']?.[eye];
    if (ordered && read)
      found.push({
        from: read,
        mm: tidy(read.value - ordered.value),
        prism: null,
        ordered: ordered.value,
        read: read.value,
        eye,
        because: null,
      });
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
  const mm = tidy(right.value - wanted('R') - (left.value - wanted('L')));
  return {
    from: right.reading >= left.reading ? right : left,
    mm,
    prism: null,
    ordered: tidy(wanted('R') - wanted('L')),
    read: tidy(right.value - left.value),
    eye: null,
    because: null,
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
  const measures = found.map((one) => {
    const eye = judged === 'monocular-pd' || judged === 'reference-point-height' ? one.eye : null;
    return unit === 'mm' ? inMm(one, ruling, eye, inMillimetres, inPrism) : asPrism(one, ruling, eye, inPrism);
  });
  const eyes = new Set(measures.map(({ eye }) => eye));
  return [...eyes].map((eye) =>
    measures.filter((one) => one.eye === eye).reduce((a, b) => (excess(b) > excess(a) ? b : a)),
  );
}

const excess = ({ deviation, limit }: Measure): number => Math.abs(deviation ?? 0) / (limit?.amount || 1);

function asPrism(one: Found, { power, limit, guard }: Ruling, eye: Eye | null, quantity: Measure['quantity']): Measure {
  const prism = one.prism ?? tidy((Math.abs(one.mm as number) / 10) * power);
  const amount = tidy((limit.amount as number) + (limit.shift / 10) * power);
  const held: Held = {
    from: one.from,
    ordered: 0,
    read: Math.abs(prism),
    deviation: prism,
    limit: amount === limit.amount ? limit : { ...limit, amount },
    beside: one.mm === null ? null : { amount: one.mm, unit: 'mm' },
    assumed: one.because,
  };
  return judge({ quantity, eye, unit: 'prism' }, held, guard);
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
  const held: Held = {
    from: one.from,
    ordered: one.ordered,
    read: one.read as number,
    deviation: one.mm,
    limit,
    beside: { amount: tidy((Math.abs(one.mm) / 10) * power), unit: 'prism' },
    assumed: one.because,
  };
  return judge({ quantity, eye, unit: 'mm' }, held, guard);
}

/** What a found error is held against. */
interface Ruling {
  /** Power of the stronger lens along the direction of the error, dioptres. */
  readonly power: number;
  readonly limit: PairLimit;
  readonly guard: GuardBand;
}
