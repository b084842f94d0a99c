import type { Eye } from '../../grammar';
import type { LensClass, ToleranceSet } from '../../tables';
import { isLess, isWithin, tidy } from '../exact';
import type { Place } from '../finding';
import type { HouseOutcome } from '../house';
import { type Limit, lensClassOf, type Unit } from '../limits';
import type { Order, OrderedLens } from '../model';
import type { Read, ReadValues, Step } from '../reduce';
import { type GuardBand, guarded, uncertaintyOf } from '../uncertainty';

/** What is held against a limit. */
export type Quantity =
  | 'power'
  | 'cylinder'
  | 'axis'
  | 'add'
  | 'intermediate'
  | 'degression'
  | 'prism'
  | 'prism-horizontal'
  | 'prism-vertical'
  | 'pd'
  | 'near-pd'
  | 'height'
  | 'height-difference'
  | 'segment-width'
  | 'segment-width-difference'
  | 'segment-tilt'
  | 'base-curve'
  | 'centre-thickness'
  | 'edge-thickness'
  | 'min-thickness'
  | 'warp'
  | 'impact'
  | 'cosmetic'
  | 'marking';

/** Whether a measure is inside its limit. */
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
  /** Null for a recorded fact, which is no figure. */
  readonly unit: Unit | null;
  readonly outcome: Outcome;
  /** Index of the reading it was taken from; the later one where two readings make it. */
  readonly reading: number | null;
  readonly place: Place | null;
  readonly steps: readonly Step[];
  /** Inside only because an instrument that shows eighths cannot decide one eighth; told, never hidden. */
  readonly tooCoarse: boolean;
  /** Why it was not read or not judged, or what was assumed. */
  readonly because: string | null;
  /** How far the instrument alone may be off, in the unit of the measure; null where nothing is known. */
  readonly uncertainty: number | null;
  /** Largest less smallest of repeated readings, in the unit of the measure; null for a single one. */
  readonly spread: number | null;
  /** The repeated readings, none where it was read once. */
  readonly repeats: readonly Repeat[];
  /** The limit of the house for this measure, where there is one. */
  readonly house: HouseOutcome | null;
  /** The same error in the other unit: millimetres beside prism, prism beside millimetres. */
  readonly beside: Beside | null;
}

export interface Repeat {
  /** In the unit of the measure. */
  readonly read: number;
  /** Of this reading from the ordered figure. */
  readonly deviation: number;
  readonly place: Place;
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
  readonly guard: GuardBand;
  /** Lenses whose refraction is measured; a cause that changes one of them does not ask for the other again. */
  readonly eyes: readonly Eye[];
}

export const classOfLens = ({ design }: OrderedLens): LensClass => lensClassOf(design?.value ?? null);

export interface Subject {
  readonly quantity: Quantity;
  readonly eye: Eye | null;
  readonly meridian?: 1 | 2 | null;
  readonly unit: Unit | null;
}

export type From = Pick<Read<unknown>, 'reading' | 'place' | 'places' | 'steps' | 'coarse' | 'instrument'>;

/** Every measure has the same fields in the same order; a hundred thousand of them cost the engine one shape. */
const blank = (
  { quantity, eye, meridian, unit }: Subject,
  outcome: Outcome,
  because: string | null,
): Writable<Measure> => ({
  quantity,
  eye,
  meridian: meridian ?? null,
  ordered: null,
  read: null,
  deviation: null,
  limit: null,
  unit,
  outcome,
  reading: null,
  place: null,
  steps: NO_STEPS,
  tooCoarse: false,
  because,
  uncertainty: null,
  spread: null,
  repeats: NO_REPEATS,
  house: null,
  beside: null,
});

type Writable<T> = { -readonly [K in keyof T]: T[K] };

const NO_STEPS: readonly Step[] = [];
const NO_REPEATS: readonly Repeat[] = [];

/** What is called for and was not read. */
export function notRead(subject: Subject, ordered: number | null, because: string | null = null): Measure {
  const measure = blank(subject, 'not-read', because);
  measure.ordered = ordered === null ? null : tidy(ordered);
  return measure;
}

/** What was read, or need not be, and cannot be judged. */
export function notJudged(subject: Subject, from: Pick<Measure, 'reading' | 'place'> | null, because: string): Measure {
  const measure = blank(subject, 'not-judged', because);
  measure.reading = from?.reading ?? null;
  measure.place = from?.place ?? null;
  return measure;
}

/** A fact that a person recorded: it passes or fails without figures. */
export function recorded(
  subject: Subject,
  from: Pick<Measure, 'reading' | 'place'>,
  outcome: 'pass' | 'fail',
): Measure {
  const measure = blank(subject, outcome, null);
  measure.reading = from.reading;
  measure.place = from.place;
  return measure;
}

/** What `judge` holds against a limit. Made by `held` and then filled in, for the engine likes one shape. */
export interface Held {
  readonly from: From;
  readonly ordered: number | null;
  readonly read: number;
  /** Read less ordered, the short way round for an axis. */
  readonly deviation: number;
  readonly limit: Limit | null;
  /** Those of the reading, unless only some of them bear on this figure. */
  steps: readonly Step[];
  /** Whether one eighth may decide; no instrument shows a prism or a length in eighths. */
  coarse: boolean;
  /** Every reading of it with its deviation, with the places they have; none where it was read once. */
  all: readonly { readonly read: number; readonly deviation: number }[];
  places: readonly Place[];
  beside: Beside | null;
  /** What had to be assumed. */
  assumed: string | null;
}

/** One figure that was read once, in the unit of its measure. */
export const held = (
  from: From,
  ordered: number | null,
  read: number,
  deviation: number,
  limit: Limit | null,
): Held => ({
  from,
  ordered,
  read,
  deviation,
  limit,
  steps: from.steps,
  coarse: from.coarse,
  all: NO_OTHERS,
  places: from.places,
  beside: null,
  assumed: null,
});

const NO_OTHERS: Held['all'] = [];

/** Each repeat of a reading as a figure with its deviation; none where it was read once. */
export const repeated = <V>(
  all: readonly V[],
  of: (value: V) => { readonly read: number; readonly deviation: number },
): Held['all'] => (all.length < 2 ? NO_OTHERS : all.map(of));

/** Largest less smallest of repeats; null for a single reading. */
const spreadOf = (repeats: readonly Repeat[]): number | null => {
  if (repeats.length === 0) return null;
  const deviations = repeats.map(({ deviation }) => deviation);
  return tidy(Math.max(...deviations) - Math.min(...deviations));
};

const repeatsOf = ({ all, places, from }: Held): readonly Repeat[] =>
  all.length < 2
    ? NO_REPEATS
    : all.map(({ read, deviation }, at) => ({
        read: tidy(read),
        deviation: tidy(deviation),
        place: places[at] ?? from.place,
      }));

/** A figure as read, held against the ordered one. */
export function figureAgainst(ordered: number, read: Read<number>, limit: Limit | null): Held {
  const figure = held(read, ordered, read.value, read.value - ordered, limit);
  figure.all = repeated(read.all, (one) => ({ read: one, deviation: one - ordered }));
  return figure;
}

/** Quantities read on a focimeter, whose uncertainty is that of the instrument. */
const FOCIMETRIC = new Set<Quantity>([
  'power',
  'cylinder',
  'add',
  'intermediate',
  'degression',
  'prism',
  'prism-horizontal',
  'prism-vertical',
]);

/** One eighth: what a printed limit of 0.12 or 0.13 stands for on an instrument that shows no finer. */
const EIGHTH = 0.125;

/**
 * Holds a deviation against its limit, to the printed digit and inclusive. Repeats that lie farther apart than the limit
 * are not judged: their mean says nothing.
 */
export function judge(subject: Subject, figure: Held, guard: GuardBand): Measure {
  const { from, limit, deviation, ordered, read } = figure;
  const measure = blank(subject, 'not-judged', figure.assumed);
  measure.ordered = ordered === null ? null : tidy(ordered);
  measure.read = tidy(read);
  measure.deviation = tidy(deviation);
  measure.limit = limit;
  measure.reading = from.reading;
  measure.place = from.place;
  measure.steps = figure.steps;
  measure.repeats = repeatsOf(figure);
  measure.spread = spreadOf(measure.repeats);
  measure.beside = figure.beside;
  measure.uncertainty = FOCIMETRIC.has(subject.quantity) ? uncertaintyOf(from.instrument, subject.unit, read) : null;
  if (limit === null) measure.because = 'no-limit';
  else if (limit.amount === null) {
    measure.outcome = 'pass';
    measure.because = 'not-defined';
  } else if (measure.spread !== null && !isWithin(measure.spread, limit.amount)) measure.because = 'spread';
  else {
    measure.tooCoarse = figure.coarse && isOneEighth(deviation, limit);
    const inside = isWithin(deviation, limit.amount) || measure.tooCoarse;
    const decided =
      guard === 'simple' || measure.uncertainty === null
        ? inside
        : isWithin(deviation, guarded(limit.amount, measure.uncertainty, guard));
    if (decided !== inside) measure.because = guard;
    measure.outcome = decided ? 'pass' : 'fail';
  }
  return measure;
}

/** Holds a figure against a lower bound that the order itself sets; no table is asked. */
export function atLeast(subject: Subject, from: Read<number>, bound: number): Measure {
  const measure = blank(subject, isLess(from.value, bound) ? 'fail' : 'pass', null);
  measure.ordered = tidy(bound);
  measure.read = tidy(from.value);
  measure.deviation = tidy(from.value - bound);
  measure.reading = from.reading;
  measure.place = from.place;
  measure.steps = from.steps;
  return measure;
}

/**
 * One eighth against a printed limit of 0.12 or 0.13 on an instrument that reads in eighths or quarters counts as
 * inside, whichever side it lies on, and is always told. Common practice, no source.
 */
function isOneEighth(deviation: number, limit: Limit): boolean {
  const printed = limit.unit === 'D' && (limit.amount === 0.12 || limit.amount === 0.13);
  return printed && isWithin(Math.abs(deviation) - EIGHTH, 0);
}
