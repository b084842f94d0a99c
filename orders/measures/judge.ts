/** Holds what was read against its limit. */
import { isLess, isWithin, tidy } from '../exact';
import type { Place } from '../finding';
import type { Limit } from '../limits';
import type { Read, Step } from '../reduce';
import { canTell, type GuardBand, guarded, uncertaintyOf } from '../uncertainty';
import { type Beside, blank, type From, type Measure, type Repeat, type Subject } from './measure';
import type { Quantity } from './quantity';

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
  /** How far the repeats lie apart, where it is not the largest less the smallest deviation. */
  spread: number | null;
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
  spread: null,
  beside: null,
  assumed: null,
});

const NO_OTHERS: Held['all'] = [];
const NO_REPEATS: readonly Repeat[] = [];

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
  measure.spread = measure.repeats.length === 0 ? null : (figure.spread ?? spreadOf(measure.repeats));
  measure.beside = figure.beside;
  measure.uncertainty = FOCIMETRIC.has(subject.quantity) ? uncertaintyOf(from.instrument, subject.unit, read) : null;
  if (limit === null) measure.because = 'no-limit';
  else if (limit.amount === null) {
    measure.outcome = 'pass';
    measure.because = 'not-defined';
  } else if (measure.spread !== null && !isWithin(measure.spread, limit.amount)) measure.because = 'spread';
  else {
    measure.tooCoarse = figure.coarse && isOneEighth(deviation, limit);
    decide(measure, limit.amount, isWithin(deviation, limit.amount) || measure.tooCoarse, guard);
  }
  return measure;
}

/** Decides by the limit, or by what the guard leaves of it where the uncertainty is known. */
function decide(measure: ReturnType<typeof blank>, limit: number, inside: boolean, guard: GuardBand): void {
  const { uncertainty, deviation } = measure;
  measure.outcome = inside ? 'pass' : 'fail';
  if (guard === 'simple' || uncertainty === null || deviation === null) return;
  const decided = isWithin(deviation, guarded(limit, uncertainty, guard));
  if (canTell(limit, uncertainty)) {
    if (decided !== inside) measure.because = guard;
    measure.outcome = decided ? 'pass' : 'fail';
  } else if (guard === 'accept-when-sure' ? inside : decided && !inside) {
    measure.because = 'cannot-tell';
    measure.outcome = 'not-judged';
  }
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
