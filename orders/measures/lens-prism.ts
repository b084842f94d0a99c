/** Unwanted prism of each lens by itself: of lenses not yet glazed, and of mounted ones where a set limits each. */
import type { Eye } from '../../grammar';
import { type Power, type PrismVector, powerAt } from '../../optics';
import { attempt } from '../attempt';
import { isSame, tidy } from '../exact';
import { type LensPrismLimit, lensPrismLimits } from '../limits';
import { EYES, type OrderedLens, type PrismPart } from '../model';
import type { Read } from '../reduce';
import { held, judge, repeated } from './judge';
import { type Case, classOfLens, classOfPair, type Measure, notJudged, notRead, type Quantity } from './measure';
import { acrossAsRead, heightsAsRead } from './places';
import { meridianSlots, powerAtReference } from './power';
import { prismsOfPlaces } from './prism-of-places';
import { isSharedFreely } from './split-prism';
import { orderedPrism, prismRead, unsaidThinning, unwantedIn } from './wanted-prism';

/**
 * Judged where it was read. Called for where prism is ordered in a lens that is not glazed, and at the prism point of
 * progressives; the prism of other mounted pairs is called for as that of the pair. Prism the lab may share freely is
 * left to the pair.
 */
export function lensPrismMeasures(one: Case): Measure[] {
  const { order, set } = one;
  if (order.supply === 'glazed' && isSharedFreely(order)) return [];
  return EYES.flatMap((eye) => {
    const lens = order.lenses[eye];
    if (lens.role !== 'made') return [];
    const limits = lensPrismLimits(set, classOfLens(lens), order.supply, orderedPrism(order, eye));
    if (limits.length === 0) return withoutLimit(one, lens);
    const power = powerAtReference(order, lens);
    if (power === null || power === 'unstated') return [];
    const found = limits.map((limit) => ({
      limit,
      read: prismRead(order, one.values, eye, PARTS[limit.component]) ?? byPlace(one, eye, limit.component),
    }));
    const isRead = found.some(({ read }) => read !== null);
    if (!isRead) return isCalledFor(one, lens) ? [notRead({ quantity: 'prism', eye, unit: 'prism' }, null)] : [];
    return found.map(({ limit, read }) =>
      read
        ? measureOf(one, lens, power, read, limit)
        : notRead({ quantity: QUANTITIES[limit.component], eye, unit: 'prism' }, null),
    );
  });
}

/** The prism a mounted lens makes of the place it stands in, where that was read instead; the worst that a sum may mean. */
function byPlace({ order, values }: Case, eye: Eye, component: LensPrismLimit['component']): Read<PrismVector> | null {
  if (order.supply !== 'glazed' || classOfPair(order) === 'progressive') return null;
  const [across, upwards] = [acrossAsRead(order, values), heightsAsRead(order, values)];
  const from = (component === 'vertical' ? upwards : across)?.from;
  const ways = from && prismsOfPlaces(order, values, across, upwards);
  if (!from || !ways) return null;
  let worst: PrismVector | null = null;
  for (const { [eye]: own } of ways)
    if (!worst || Math.abs(partOf(own, component)) > Math.abs(partOf(worst, component))) worst = own;
  const wanted = orderedPrism(order, eye);
  const value = { right: (worst?.right ?? 0) + wanted.right, up: (worst?.up ?? 0) + wanted.up };
  return { ...from, value, all: [value], places: [from.place] };
}

/** Prism that the set has no limit for is not judged, and never taken for none. */
function withoutLimit({ order, values }: Case, { eye }: OrderedLens): Measure[] {
  if (order.supply === 'glazed') return [];
  const subject = { quantity: 'prism', eye, unit: 'prism' } as const;
  const wanted = orderedPrism(order, eye);
  const read = prismRead(order, values, eye);
  if (!read) return partOf(wanted, 'resultant') === 0 ? [] : [notRead(subject, null)];
  return partOf(unwantedIn(read.value, order, eye), 'resultant') === 0 ? [] : [notJudged(subject, read, 'no-limit')];
}

function isCalledFor({ order }: Case, lens: OrderedLens): boolean {
  if (order.supply === 'glazed') return classOfLens(lens) === 'progressive';
  const { right, up } = orderedPrism(order, lens.eye);
  return right !== 0 || up !== 0;
}

const QUANTITIES: Readonly<Record<LensPrismLimit['component'], Quantity>> = {
  horizontal: 'prism-horizontal',
  vertical: 'prism-vertical',
  resultant: 'prism',
};

const PARTS: Readonly<Record<LensPrismLimit['component'], readonly PrismPart[]>> = {
  horizontal: ['right'],
  vertical: ['up'],
  resultant: ['right', 'up'],
};

function measureOf(
  one: Case,
  lens: OrderedLens,
  power: Power,
  read: Read<PrismVector>,
  found: LensPrismLimit,
): Measure {
  const { eye } = lens;
  const unwanted = (prism: PrismVector): PrismVector => {
    const { right, up } = unwantedIn(prism, one.order, eye);
    return { right, up: up - thinningOf(one, eye) };
  };
  const size = (prism: PrismVector): number => partOf(unwanted(prism), found.component);
  const error = unwanted(read.value);
  const along = found.powerOf === 'strongest-meridian' ? strongest(power) : alongError(power, error, found.component);
  const amounts = found.limits.map(({ amount, mm }) => tidy(amount + (mm / 10) * along));
  const amount = found.combine === 'any' ? Math.max(...amounts) : Math.min(...amounts);
  const deviation = size(read.value);
  const figure = held(read, 0, Math.abs(deviation), deviation, { ...found.limit, amount });
  figure.coarse = false;
  figure.all = repeated(read.all, (prism) => ({ read: Math.abs(size(prism)), deviation: size(prism) }));
  // The sizes of two prisms say nothing of where they point.
  if (found.component === 'resultant') figure.spread = apart(read.all);
  if (along > 0.25) figure.beside = { amount: tidy((Math.abs(deviation) / along) * 10), unit: 'mm' };
  return judge({ quantity: QUANTITIES[found.component], eye, unit: 'prism' }, figure, one.guard);
}

/** How far the prisms that were read lie apart, prism dioptres. */
function apart(all: readonly PrismVector[]): number {
  let most = 0;
  for (const a of all) for (const b of all) most = Math.max(most, Math.hypot(a.right - b.right, a.up - b.up));
  return tidy(most);
}

function thinningOf({ order, values }: Case, eye: Eye): number {
  const [right, left] = [prismRead(order, values, 'R'), prismRead(order, values, 'L')];
  return right && left && order.lenses[eye] ? unsaidThinning(order, right.value, left.value) : 0;
}

const partOf = ({ right, up }: PrismVector, component: LensPrismLimit['component']): number =>
  tidy(component === 'horizontal' ? right : component === 'vertical' ? up : Math.hypot(right, up));

const strongest = (power: Power): number => tidy(Math.abs(meridianSlots(power)[0].of(power)));

/** Power along the way the error points; where there is none, any direction will do. */
function alongError(power: Power, { right, up }: PrismVector, component: LensPrismLimit['component']): number {
  const degrees = (Math.atan2(up, right) * 180) / Math.PI;
  const meridian = component === 'horizontal' ? 180 : component === 'vertical' ? 90 : degrees;
  return tidy(Math.abs(attempt(() => powerAt(power, isSame(meridian, 0) ? 180 : meridian)) ?? 0));
}
