/** The prism of each lens beyond the ordered one: as it was read, or as it comes of the place the lens stands in. */
import type { Eye } from '../../grammar';
import type { PrismVector } from '../../optics';
import type { Place } from '../finding';
import type { Order, PerEye } from '../model';
import type { ReadValues } from '../reduce';
import { type Along, acrossAsRead, heightsAsRead, isOfEach } from './places';
import { prismsOfPlaces } from './prism-of-places';
import { prismRead, unwantedIn } from './wanted-prism';

/** Unwanted prism of one lens, prism dioptres in the examiner’s frame. */
export interface Unwanted {
  readonly prism: PrismVector;
  /** As it was read; null where it comes of a place. */
  readonly measured: PrismVector | null;
  /** How far out and up the lens stands from its place, millimetres, where that was read of each lens; null where not. */
  readonly out: number | null;
  readonly up: number | null;
  readonly place: Place;
  readonly reading: number;
}

/** Of both made lenses; null where one of them is not known. Prism that was read comes before that of a place. */
export function unwantedOfEach(order: Order, values: ReadValues): PerEye<Unwanted> | null {
  if (order.lenses.R.role !== 'made' || order.lenses.L.role !== 'made') return null;
  return byPrism(order, values) ?? byPlace(order, values);
}

function byPrism(order: Order, values: ReadValues): PerEye<Unwanted> | null {
  const of = (eye: Eye): Unwanted | null => {
    const read = prismRead(order, values, eye);
    if (!read) return null;
    const { value: measured, place, reading } = read;
    return { prism: unwantedIn(measured, order, eye), measured, out: null, up: null, place, reading };
  };
  const [R, L] = [of('R'), of('L')];
  return R && L ? { R, L } : null;
}

function byPlace(order: Order, values: ReadValues): PerEye<Unwanted> | null {
  const [across, upwards] = [ofEach(acrossAsRead(order, values)), ofEach(heightsAsRead(order, values))];
  const from = (across ?? upwards)?.from;
  const [made] = (from && prismsOfPlaces(order, values, across, upwards)) ?? [];
  if (!from || !made) return null;
  const of = (eye: Eye): Unwanted => ({
    prism: made[eye],
    measured: null,
    out: across?.ways[0]?.[eye] ?? null,
    up: upwards?.ways[0]?.[eye] ?? null,
    place: from.place,
    reading: from.reading,
  });
  return { R: of('R'), L: of('L') };
}

const ofEach = (along: Along | null): Along | null => (along && isOfEach(along) ? along : null);
