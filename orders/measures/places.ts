/**
 * Where the lenses of a glazed pair stand, as read, from where they were ordered to stand. Millimetres: outwards from the
 * nose and upwards positive.
 */
import type { Eye } from '../../grammar';
import { tidy } from '../exact';
import { EYES, type Order, type PerEye } from '../model';
import { placingPd } from '../placing-pd';
import type { Read, ReadValues } from '../reduce';
import { differenceOf, eachRepeat, sumOf } from './sums';
import { orderedPrism } from './wanted-prism';

/** How the pair stands along one direction. */
export interface Along {
  /** The reading it was taken from, with the sum of both places or the difference between them. */
  readonly from: Read<number>;
  /** Sum or difference as ordered, and the error of the one read. */
  readonly ordered: number;
  readonly error: number;
  /**
   * How far each lens may stand from its place: one way where each was read, two where only the sum or the difference is
   * known and the whole error may lie in either lens.
   */
  readonly ways: readonly PerEye<number>[];
  /** The error of each repeat, and how far each lens stood in it where each was read. */
  readonly repeats: readonly { readonly error: number; readonly each: PerEye<number> | null }[];
  /** The places are those of optical centres which the ordered prism has moved, and no error of a place. */
  readonly ofCentres: boolean;
}

/** A place each lens has by itself. */
export const isOfEach = ({ ways }: Along): boolean => ways.length === 1;

type Places = NonNullable<ReadValues['figures']['pd']>;

/** A pair for near may be read by either word: it has one distance between its centres. */
export const distancesRead = (order: Order, { figures }: ReadValues): readonly (Places | undefined)[] =>
  placingPd(order).isNear ? [figures['near-pd'], figures.pd] : [figures.pd];

/**
 * Where a lens is to stand before its eye, millimetres from the middle of the nose: its own distance, else what the other
 * one leaves of the whole, else half of it. Null where no distance is ordered.
 */
export function orderedPlace(order: Order, eye: Eye): number | null {
  const { binocular, R, L } = placingPd(order).of;
  const [own, other] = eye === 'R' ? [R, L] : [L, R];
  if (own) return own.value;
  if (!binocular) return null;
  return other ? tidy(binocular.value - other.value) : tidy(binocular.value / 2);
}

/** The distance between both places as ordered, or null where none is. */
export function orderedDistance(order: Order): number | null {
  const { binocular, R, L } = placingPd(order).of;
  return binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);
}

/**
 * Distances between the points with the ordered prism, else between the optical centres. What is known of each lens tells
 * more than a sum does, by whichever word it was read; but prism moves the centres away from those points.
 */
export function acrossAsRead(order: Order, values: ReadValues): Along | null {
  const points = distancesRead(order, values);
  const centres = values.figures['optical-centres'];
  const isPrismOrdered = EYES.some((eye) => {
    const { right, up } = orderedPrism(order, eye);
    return right !== 0 || up !== 0;
  });
  return (
    firstOf(points, (read) => acrossOfEach(order, read, false)) ??
    (isPrismOrdered || !centres ? null : acrossOfEach(order, centres, false)) ??
    firstOf(points, ({ pair }) => pair && acrossInAll(order, pair)) ??
    (centres &&
      (isPrismOrdered ? acrossOfEach(order, centres, true) : centres.pair && acrossInAll(order, centres.pair))) ??
    null
  );
}

function firstOf(
  list: readonly (Places | undefined)[],
  known: (read: Places) => Along | null | undefined,
): Along | null {
  for (const read of list) {
    const found = read && known(read);
    if (found) return found;
  }
  return null;
}

function acrossOfEach(order: Order, { R, L }: Places, ofCentres: boolean): Along | null {
  const [right, left, ordered] = [orderedPlace(order, 'R'), orderedPlace(order, 'L'), orderedDistance(order)];
  if (!R || !L || right === null || left === null || ordered === null) return null;
  const out = (a: number, b: number): PerEye<number> => ({ R: tidy(a - right), L: tidy(b - left) });
  return along(
    sumOf(R, L),
    ordered,
    [out(R.value, L.value)],
    repeatsOf(R, L, out, ({ R: a, L: b }) => a + b),
    ofCentres,
  );
}

function acrossInAll(order: Order, pair: Read<number>): Along | null {
  const ordered = orderedDistance(order);
  if (ordered === null) return null;
  const error = tidy(pair.value - ordered);
  const repeats = pair.all.map((one) => ({ error: tidy(one - ordered), each: null }));
  return along(pair, ordered, eitherLens(error, error), repeats, false);
}

/**
 * Heights above the lower tangent of the boxed lens, of single vision only: elsewhere they place a segment or a fitting
 * point. Where no heights are ordered both centres are to stand equally high, and only the difference is known.
 */
export function heightsAsRead(order: Order, values: ReadValues): Along | null {
  const { R, L } = values.figures.height ?? {};
  if (!R || !L || !EYES.every((eye) => (order.lenses[eye].design?.value.type ?? 'single-vision') === 'single-vision'))
    return null;
  const [right, left] = [order.lenses.R.height?.value ?? null, order.lenses.L.height?.value ?? null];
  const from = differenceOf(R, L);
  if (right === null && left === null) {
    const repeats = from.all.map((error) => ({ error, each: null }));
    return along(from, 0, eitherLens(from.value, tidy(0 - from.value)), repeats, false);
  }
  if (right === null || left === null) return null;
  const up = (a: number, b: number): PerEye<number> => ({ R: tidy(a - right), L: tidy(b - left) });
  const repeats = repeatsOf(R, L, up, ({ R: a, L: b }) => a - b);
  return along(from, tidy(right - left), [up(R.value, L.value)], repeats, false);
}

const along = (
  from: Read<number>,
  ordered: number,
  ways: Along['ways'],
  repeats: Along['repeats'],
  ofCentres: boolean,
): Along => ({ from, ordered, error: tidy(from.value - ordered), ways, repeats, ofCentres });

/** All of an error in the right lens, or all of it in the left one. */
const eitherLens = (right: number, left: number): Along['ways'] =>
  right === 0 && left === 0
    ? [{ R: 0, L: 0 }]
    : [
        { R: right, L: 0 },
        { R: 0, L: left },
      ];

function repeatsOf(
  right: Read<number>,
  left: Read<number>,
  moved: (right: number, left: number) => PerEye<number>,
  total: (of: PerEye<number>) => number,
): Along['repeats'] {
  return eachRepeat(right, left, moved, total).map(({ of }) => ({ error: tidy(total(of)), each: of }));
}
