import type { Eye } from '../../grammar';
import type { LensClass, ToleranceSet } from '../../tables';
import { tidy } from '../exact';
import type { Place } from '../finding';
import type { HouseOutcome } from '../house';
import { type Limit, lensClassOf, type Unit } from '../limits';
import type { Order, OrderedLens } from '../model';
import type { Read, ReadValues, Step } from '../reduce';
import type { GuardBand } from '../uncertainty';
import type { Quantity } from './quantity';

export type { Quantity } from './quantity';

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

/** Both lenses of a pair are judged by the tables of the stricter placing: a progressive in either makes it one. */
export const classOfPair = ({ lenses: { R, L } }: Order): LensClass =>
  classOfLens(R) === 'progressive' || classOfLens(L) === 'progressive' ? 'progressive' : 'single-vision-multifocal';

export interface Subject {
  readonly quantity: Quantity;
  readonly eye: Eye | null;
  readonly meridian?: 1 | 2 | null;
  readonly unit: Unit | null;
}

export type From = Pick<Read<unknown>, 'reading' | 'place' | 'places' | 'steps' | 'coarse' | 'instrument'>;

/** Every measure has the same fields in the same order; a hundred thousand of them cost the engine one shape. */
export const blank = (
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

export type Writable<T> = { -readonly [K in keyof T]: T[K] };

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
