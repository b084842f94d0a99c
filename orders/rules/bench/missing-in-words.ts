import type { Eye } from '../../../grammar';
import { isOffice, isProgressive, isSingleVision } from '../../lens-kinds';
import type { Measure, Quantity } from '../../measures/measure';
import { prismRead } from '../../measures/wanted-prism';
import { EYES, type Order, otherEye, type PrismPart } from '../../model';
import type { ReadValues } from '../../reduce';
import { quantityInWords } from '../../words';

/** One quantity that is missing, and for which lenses; no eye for what belongs to the pair. */
export interface Missing {
  readonly quantity: Quantity;
  readonly eyes: readonly Eye[];
  /** What of it is truly missing, where part of it was read or it counts at one point only. */
  readonly detail?: Detail;
}

/** Which words say what is still to be read. */
export type Detail = keyof typeof DETAILS;

/** What was called for and not read, each quantity once. A missing power brings its cylinder and axis with it. */
export function missingOf(measures: readonly Measure[], order: Order, values: ReadValues): readonly Missing[] {
  const missing = new Map<Quantity, Set<Eye>>();
  for (const { outcome, quantity, eye } of measures) {
    if (outcome !== 'not-read') continue;
    const eyes = missing.get(quantity) ?? new Set();
    if (eye) eyes.add(eye);
    missing.set(quantity, eyes);
  }
  const withoutPower = missing.get('power');
  for (const part of ['cylinder', 'axis'] as const) {
    const eyes = missing.get(part);
    if (!eyes || !withoutPower) continue;
    for (const eye of withoutPower) eyes.delete(eye);
    if (eyes.size === 0) missing.delete(part);
  }
  const all = [...missing].map(([quantity, eyes]) => trulyMissing({ quantity, eyes: [...eyes] }, order, values));
  // Both parts of the prism of one lens are one thing to read.
  return all.filter((one, at) => !all.slice(0, at).some((other) => isSameThing(one, other)));
}

const isSameThing = (one: Missing, other: Missing): boolean =>
  one.detail !== undefined && one.detail === other.detail && one.eyes.join() === other.eyes.join();

/** Names the point, the lens or the part that nobody has read yet, and not the whole that it belongs to. */
function trulyMissing(missing: Missing, order: Order, values: ReadValues): Missing {
  const { quantity, eyes } = missing;
  if (quantity === 'power') {
    const detail = pointOfPower(eyes, order, values);
    return detail ? { ...missing, detail } : missing;
  }
  if (quantity === 'degression') return { ...missing, detail: 'top-power' };
  if (eyes.length > 0) return missing;
  if (quantity === 'near-pd') return halfOf(missing, 'near-pd', values, 'near-pd-half');
  if (quantity === 'prism-vertical') return placeOf(missing, 'up', order, values);
  if (quantity === 'prism-horizontal' || quantity === 'pd') return placeOf(missing, 'right', order, values);
  return missing;
}

/** A power that was read at another point of the lens than the one that is judged. */
function pointOfPower(eyes: readonly Eye[], { lenses }: Order, values: ReadValues): Detail | null {
  const isElsewhere = (eye: Eye): boolean => Boolean(values.nearPower[eye] ?? values.topPower[eye]);
  if (eyes.length === 0 || !eyes.every(isElsewhere)) return null;
  return eyes.every((eye) => isOffice(lenses[eye])) ? 'near-power' : 'distance-power';
}

function placeOf(missing: Missing, part: PrismPart, order: Order, values: ReadValues): Missing {
  const read = EYES.filter((eye) => prismRead(order, values, eye, [part]) !== null);
  const half = EYES.filter((eye) => !read.includes(eye) && values.prism[eye]?.unsaid?.includes(part));
  if (half.length > 0) return { ...missing, eyes: half, detail: part === 'up' ? 'vertical-part' : 'horizontal-part' };
  const [only] = read;
  if (only && read.length === 1) return { ...missing, eyes: [otherEye(only)], detail: 'prism-of-one' };
  if (EYES.some((eye) => isProgressive(order.lenses[eye])))
    return { ...missing, detail: part === 'up' ? 'vertical-at-prp' : 'horizontal-at-prp' };
  if (part === 'up') {
    if (!EYES.every((eye) => isSingleVision(order.lenses[eye]))) return { ...missing, detail: 'vertical-prism' };
    return halfOf(missing, 'height', values, 'height-of-one');
  }
  const centres = halfOf(missing, 'optical-centres', values, 'centre-of-one');
  return centres.detail ? centres : halfOf(missing, 'pd', values, 'pd-half');
}

/** The other lens, where one of the two was read. */
function halfOf(
  missing: Missing,
  quantity: 'near-pd' | 'height' | 'optical-centres' | 'pd',
  { figures }: ReadValues,
  detail: Detail,
): Missing {
  const sides = figures[quantity];
  const read = sides?.pair ? [] : EYES.filter((eye) => sides?.[eye]);
  const [only] = read;
  return only && read.length === 1 ? { ...missing, eyes: [otherEye(only)], detail } : missing;
}

/** `L power, add of both lenses, PD, the vertical place of the centres (prism or heights)`. */
export const missingInWords = (missing: readonly Missing[]): string => missing.map(oneInWords).join(', ');

function oneInWords({ quantity, eyes, detail }: Missing): string {
  const words = (detail && DETAILS[detail]) ?? PLACING[quantity] ?? quantityInWords(quantity);
  if (eyes.length === 0) return words;
  return eyes.length === 2 ? `${words} of both lenses` : `${eyes[0]} ${words}`;
}

/** Placing can be read in several ways, and any of them will do. */
const PLACING: Readonly<Partial<Record<Quantity, string>>> = {
  'prism-horizontal': 'the horizontal place of the centres (PD, optical centres or prism)',
  'prism-vertical': 'the vertical place of the centres (prism or heights)',
};

const DETAILS = {
  'distance-power': 'distance power',
  'near-power': 'power at the near point',
  'top-power': 'power at the top (degression)',
  'prism-of-one': 'prism',
  'horizontal-part': 'horizontal part of the prism',
  'vertical-part': 'vertical part of the prism',
  'horizontal-at-prp': 'the horizontal prism at the prism reference point',
  'vertical-at-prp': 'the vertical prism at the prism reference point',
  'vertical-prism': 'the vertical prism of both lenses at the distance reference point',
  'height-of-one': 'height of the centre',
  'centre-of-one': 'optical centre',
  'pd-half': 'PD',
  'near-pd-half': 'near PD',
} as const;
