import type { Eye } from '../../grammar';
import type { Evidence, LensClass, SourceId, ToleranceSet } from '../../tables';
import { isWithin, tidy } from '../exact';
import type { Place } from '../finding';
import type { Limit, Unit } from '../limits';
import type { Order, OrderedLens } from '../model';
import type { Read, ReadValues, Step } from '../reduce';

export type Quantity =
  | 'power'
  | 'cylinder'
  | 'axis'
  | 'add'
  | 'prism-horizontal'
  | 'prism-vertical'
  | 'pd'
  | 'near-pd'
  | 'height'
  | 'height-difference'
  | 'segment-width'
  | 'segment-tilt'
  | 'base-curve'
  | 'centre-thickness'
  | 'edge-thickness'
  | 'min-thickness'
  | 'warp'
  | 'impact'
  | 'cosmetic';

export type Outcome = 'pass' | 'fail' | 'not-read' | 'not-judged';

/** One thing held against its limit. Dioptres, prism dioptres, millimetres or degrees, as `unit` says. */
export interface Measure {
  readonly quantity: Quantity;
  /** Null for what belongs to the pair. */
  readonly eye: Eye | null;
  /** 1 is the meridian of higher absolute ordered power, the more plus of equals. */
  readonly meridian?: 1 | 2;
  readonly ordered: number | null;
  readonly read: number | null;
  /** Read less ordered, the short way round for an axis. */
  readonly deviation: number | null;
  readonly limit: Limit | null;
  readonly unit: Unit;
  readonly outcome: Outcome;
  /** Index of the reading it was taken from; the later one where two readings make it. */
  readonly reading: number | null;
  readonly place: Place | null;
  readonly steps: readonly Step[];
  /** Inside only because an instrument that shows eighths cannot decide one eighth; told, never hidden. */
  readonly tooCoarse?: boolean;
  /** Why it was not read or not judged, or what was assumed. */
  readonly because?: string;
  /** The same error in the other unit: millimetres beside prism, prism beside millimetres. */
  readonly beside?: { readonly amount: number; readonly unit: Unit };
}

/** Everything a measure is made from. */
export interface Case {
  readonly order: Order;
  readonly values: ReadValues;
  readonly set: ToleranceSet;
}

export const classOfLens = (lens: OrderedLens): LensClass =>
  lens.design?.value.type === 'progressive' || lens.design?.value.type === 'office'
    ? 'progressive'
    : 'single-vision-multifocal';

export interface Subject {
  readonly quantity: Quantity;
  readonly eye: Eye | null;
  readonly meridian?: 1 | 2;
  readonly unit: Unit;
}

/** What is called for and was not read. */
export const notRead = (subject: Subject, ordered: number | null, because?: string): Measure => ({
  ...subject,
  ordered: ordered === null ? null : tidy(ordered),
  read: null,
  deviation: null,
  limit: null,
  outcome: 'not-read',
  reading: null,
  place: null,
  steps: [],
  ...(because ? { because } : {}),
});

/** One eighth: what a printed limit of 0.12 or 0.13 stands for on an instrument that shows no finer. */
const EIGHTH = 0.125;

/** Holds a deviation against its limit, to the printed digit and inclusive. */
export function judge(
  subject: Subject,
  from: Pick<Read<unknown>, 'reading' | 'place' | 'steps' | 'coarse'>,
  ordered: number | null,
  read: number,
  deviation: number,
  limit: Limit | null,
): Measure {
  const base = {
    ...subject,
    ordered: ordered === null ? null : tidy(ordered),
    read: tidy(read),
    deviation: tidy(deviation),
    limit,
    reading: from.reading,
    place: from.place,
    steps: from.steps,
  };
  if (!limit) return { ...base, outcome: 'not-judged', because: 'no-limit' };
  if (limit.amount === null) return { ...base, outcome: 'pass', because: 'not-defined' };
  if (isWithin(deviation, limit.amount))
    return { ...base, outcome: 'pass', ...(isOneEighthCase(from, deviation, limit) ? { tooCoarse: true } : {}) };
  return isOneEighthCase(from, deviation, limit)
    ? { ...base, outcome: 'pass', tooCoarse: true }
    : { ...base, outcome: 'fail' };
}

/**
 * One eighth against a printed limit of 0.12 or 0.13 on an instrument that reads in eighths or quarters counts as
 * inside, whichever side it lies on, and is always told. Common practice, no source.
 */
function isOneEighthCase({ coarse }: Pick<Read<unknown>, 'coarse'>, deviation: number, limit: Limit): boolean {
  const printed = limit.unit === 'D' && (limit.amount === 0.12 || limit.amount === 0.13);
  return coarse && printed && isWithin(Math.abs(deviation) - EIGHTH, 0);
}

export interface Established {
  readonly set: string;
  readonly source: SourceId;
  readonly evidence: Evidence;
}
