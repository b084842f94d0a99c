import type { Eye } from '../../grammar';
import type { LensClass, ToleranceSet } from '../../tables';
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
  readonly meridian: 1 | 2 | null;
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
  readonly tooCoarse: boolean;
  /** Why it was not read or not judged, or what was assumed. */
  readonly because: string | null;
  /** The same error in the other unit: millimetres beside prism, prism beside millimetres. */
  readonly beside: Beside | null;
}

export interface Beside {
  readonly amount: number;
  readonly unit: Unit;
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
  readonly meridian?: 1 | 2 | null;
  readonly unit: Unit;
}

type From = Pick<Read<unknown>, 'reading' | 'place' | 'steps' | 'coarse'>;

const NOWHERE = { reading: null, place: null, steps: [] as readonly Step[] };

/** Every measure has the same fields in the same order; a hundred thousand of them cost the engine one shape. */
const make = (
  { quantity, eye, meridian, unit }: Subject,
  from: Pick<Measure, 'reading' | 'place' | 'steps'>,
  ordered: number | null,
  read: number | null,
  deviation: number | null,
  limit: Limit | null,
  outcome: Outcome,
  tooCoarse: boolean,
  because: string | null,
  beside: Beside | null,
): Measure => ({
  quantity,
  eye,
  meridian: meridian ?? null,
  ordered,
  read,
  deviation,
  limit,
  unit,
  outcome,
  reading: from.reading,
  place: from.place,
  steps: from.steps,
  tooCoarse,
  because,
  beside,
});

/** What is called for and was not read. */
export const notRead = (subject: Subject, ordered: number | null, because: string | null = null): Measure =>
  make(subject, NOWHERE, ordered === null ? null : tidy(ordered), null, null, null, 'not-read', false, because, null);

/** What was read, or need not be, and cannot be judged. */
export const notJudged = (
  subject: Subject,
  from: Pick<Measure, 'reading' | 'place'> | null,
  because: string,
): Measure =>
  make(
    subject,
    { ...NOWHERE, ...(from && { reading: from.reading, place: from.place }) },
    null,
    null,
    null,
    null,
    'not-judged',
    false,
    because,
    null,
  );

/** A fact that a person recorded: it passes or fails without figures. */
export const recorded = (
  subject: Subject,
  from: Pick<Measure, 'reading' | 'place'>,
  outcome: 'pass' | 'fail',
): Measure =>
  make(
    subject,
    { reading: from.reading, place: from.place, steps: NOWHERE.steps },
    null,
    null,
    null,
    null,
    outcome,
    false,
    null,
    null,
  );

/** One eighth: what a printed limit of 0.12 or 0.13 stands for on an instrument that shows no finer. */
const EIGHTH = 0.125;

/** Holds a deviation against its limit, to the printed digit and inclusive. */
export function judge(
  subject: Subject,
  from: From,
  ordered: number | null,
  read: number,
  deviation: number,
  limit: Limit | null,
  beside: Beside | null = null,
  assumed: string | null = null,
): Measure {
  const undecided = limit !== null && isOneEighthCase(from, deviation, limit);
  const outcome: Outcome =
    limit === null
      ? 'not-judged'
      : limit.amount === null || undecided || isWithin(deviation, limit.amount)
        ? 'pass'
        : 'fail';
  const because = limit === null ? 'no-limit' : limit.amount === null ? 'not-defined' : assumed;
  return make(
    subject,
    from,
    ordered === null ? null : tidy(ordered),
    tidy(read),
    tidy(deviation),
    limit,
    outcome,
    undecided,
    because,
    beside,
  );
}

/**
 * One eighth against a printed limit of 0.12 or 0.13 on an instrument that reads in eighths or quarters counts as
 * inside, whichever side it lies on, and is always told. Common practice, no source.
 */
function isOneEighthCase({ coarse }: From, deviation: number, limit: Limit): boolean {
  if (!coarse) return false;
  const printed = limit.unit === 'D' && (limit.amount === 0.12 || limit.amount === 0.13);
  return printed && isWithin(Math.abs(deviation) - EIGHTH, 0);
}
