/** An order against its readings: every measure the verdict rests on, the verdict, and the values a reading once had. */
import { EVIDENCE_FROM_FIRM_TO_WEAK, type Evidence, type ToleranceSet } from '../tables';
import { type Context, type Standard, standardOf } from './context';
import { type HouseSet, houseOutcome } from './house';
import { addMeasures } from './measures/adds';
import { lensPrismMeasures } from './measures/lens-prism';
import type { Case, Measure } from './measures/measure';
import { physicalMeasures } from './measures/physical';
import { placingMeasures } from './measures/placing';
import { positionMeasures } from './measures/positions';
import { powerMeasures } from './measures/power';
import { EYES, type Order, otherEye, type Reading } from './model';
import { noValues, type ReadValues, reduce, type Taken } from './reduce';
import { isFailedTest, isTest } from './test-results';
import type { GuardBand } from './uncertainty';

/** The verdict on an order; `incomplete` is neither outside nor wholly read, `unread` has no reading. */
export type Verdict = 'accept' | 'reject' | 'incomplete' | 'unread';

/** An order held against its tolerance set. */
export interface Evaluation {
  readonly set: ToleranceSet | null;
  readonly house: HouseSet | null;
  /** Name of the standard as written, also when there is no such set. */
  readonly standard: string | null;
  /** The decision rule that the measures were judged by. */
  readonly guard: GuardBand;
  readonly verdict: Verdict;
  /** Codes of what keeps an acceptance from being plain. */
  readonly reservations: readonly string[];
  /** Codes of findings that keep the order from being accepted: what was not understood, contradicts itself or cannot be. */
  readonly unresolved: readonly string[];
  /** The ones the verdict rests on: newest value of the lens now in the frame. */
  readonly measures: readonly Measure[];
  /** Measures of values that a later one replaced, by reading. */
  readonly earlier: readonly Measure[];
  readonly values: ReadValues;
  /** The weakest evidence among the limits that decided. */
  readonly evidence: Evidence | null;
}

const EMPTY: ReadValues = noValues();

export const evaluate = (order: Order, context: Context): Evaluation =>
  evaluateBy(standardOf(order, context), order, context);

/** The same by another standard than the one the order names. */
export function evaluateBy({ set, name, house }: Standard, order: Order, context: Context): Evaluation {
  if (context.missing.length > 0) return unknown({ set, house, standard: name, guard: context.guard }, order);
  const all = chronological(order.readings);
  const counting = order.readings.every((reading) => counts(order, reading))
    ? all
    : all.filter(({ one, reading }) => counts(order, order.readings[reading] as Reading) || isFailedTest(one));
  const current = stillInFrame(counting, order.readings);
  const values = current.length > 0 ? reduce(current, order.readings, context.instruments, order.lenses) : EMPTY;
  const base = { set, house, standard: name, guard: context.guard, values };
  if (!set)
    return {
      verdict: all.length > 0 ? 'incomplete' : 'unread',
      reservations: [],
      unresolved: [],
      measures: [],
      earlier: [],
      evidence: null,
      ...base,
    };
  const judging = { order, set, guard: context.guard, eyes: EYES };
  const measures = withHouse(measuresOf({ values, ...judging }), house);
  const earlier = order.readings.length > 1 ? replacedMeasures(judging, all, measures, context) : [];
  const verdict = order.readings.length === 0 ? 'unread' : verdictOf(measures);
  return {
    verdict,
    reservations: reservations(measures),
    unresolved: [],
    measures,
    earlier,
    evidence: weakest(measures),
    ...base,
  };
}

/** Nothing is judged, nor reduced by a zero that is not known, before everything is there that the order rests on. */
const unknown = (by: Pick<Evaluation, 'set' | 'house' | 'standard' | 'guard'>, { readings }: Order): Evaluation => ({
  verdict: readings.length > 0 ? 'incomplete' : 'unread',
  reservations: [],
  unresolved: [],
  measures: [],
  earlier: [],
  evidence: null,
  ...by,
  values: EMPTY,
});

/** What is measured together, in the order in which it is told. */
const MEASURERS = {
  refraction: powerMeasures,
  adds: addMeasures,
  places: (one: Case): Measure[] => {
    const placed = placingMeasures(one);
    return placed.concat(lensPrismMeasures(one), positionMeasures(one, placed));
  },
  physical: physicalMeasures,
} as const;

export type MeasuredPart = keyof typeof MEASURERS;

const ALL_PARTS = Object.keys(MEASURERS) as readonly MeasuredPart[];

/** The measures of one case by the published set; a cause asks for those parts alone that it speaks of. */
export function measuresOf(one: Case, parts: readonly MeasuredPart[] = ALL_PARTS): Measure[] {
  const measures: Measure[] = [];
  for (const part of parts) measures.push(...MEASURERS[part](one));
  return measures;
}

function verdictOf(measures: readonly Measure[]): Verdict {
  if (measures.some(({ outcome }) => outcome === 'fail')) return 'reject';
  if (measures.length === 0 || measures.some(({ outcome }) => outcome === 'not-read' || outcome === 'not-judged'))
    return 'incomplete';
  return 'accept';
}

const reservations = (measures: readonly Measure[]): string[] => [
  ...(measures.some(({ tooCoarse }) => tooCoarse) ? ['near-the-limit'] : []),
  ...(measures.some(({ house, outcome }) => house?.breached && outcome === 'pass') ? ['house-limit'] : []),
];

/** Adds what the house asks to each measure; the verdict stays that of the published set. */
function withHouse(measures: readonly Measure[], house: HouseSet | null): readonly Measure[] {
  if (!house) return measures;
  const cylinder = (eye: Measure['eye']): number =>
    measures.find((one) => one.quantity === 'cylinder' && one.eye === eye)?.ordered ?? 0;
  return measures.map((one) => ({
    ...one,
    house: houseOutcome(house, one, one.quantity === 'axis' ? cylinder(one.eye) : (one.ordered ?? 0)),
  }));
}

/** Of the limits that were broken, which alone decide a reject; else of all that were held. */
function weakest(measures: readonly Measure[]): Evidence | null {
  const deciding = measures.some(({ outcome }) => outcome === 'fail') ? 'fail' : 'pass';
  let found = -1;
  for (const { outcome, limit } of measures)
    if (outcome === deciding && limit) found = Math.max(found, EVIDENCE_FROM_FIRM_TO_WEAK.indexOf(limit.evidence));
  return EVIDENCE_FROM_FIRM_TO_WEAK[found] ?? null;
}

/** Only a final reading speaks for glazed spectacles; uncut and edged lenses are spoken for by readings of any stage. */
export const counts = (order: Order, reading: Reading): boolean =>
  order.supply !== 'glazed' || reading.stage === 'final';

/**
 * All measurements, oldest first. Readings are ordered by date and time; a missing part compares as equal, and then
 * the order of the lines decides. Inserted one by one, since such a comparison is no total order.
 */
function chronological(readings: readonly Reading[]): Taken[] {
  const [only, ...more] = readings;
  if (only && more.length === 0) return only.measurements.map((one) => ({ one, reading: 0 }));
  const sorted: number[] = [];
  for (const index of readings.keys()) {
    let at = sorted.length;
    while (at > 0 && isLater(readings[sorted[at - 1] as number] as Reading, readings[index] as Reading)) at--;
    sorted.splice(at, 0, index);
  }
  return sorted.flatMap((reading) => (readings[reading] as Reading).measurements.map((one) => ({ one, reading })));
}

export function isLater(a: Reading, b: Reading): boolean {
  if (a.date === null || b.date === null) return false;
  if (a.date !== b.date) return a.date > b.date;
  return a.time !== null && b.time !== null && a.time > b.time;
}

/**
 * Leaves out what was measured on a lens that has been replaced since, and on the pair it stood in. A passed test of the
 * pair still speaks for the lens that stayed; of a failed one the new lens is the answer.
 */
function stillInFrame(taken: readonly Taken[], readings: readonly Reading[]): readonly Taken[] {
  if (readings.every(({ replaced }) => replaced.length === 0)) return taken;
  const events = readings.flatMap(({ replaced }, reading) =>
    replaced.map(({ value, place }) => ({ eye: value, line: place.line, reading })),
  );
  return taken.flatMap((item, at) => {
    const gone = events.filter(({ eye, line, reading }) => {
      if (item.one.eye !== null && item.one.eye !== eye) return false;
      const from = taken.findIndex((other) => other.reading === reading && other.one.place.line > line);
      return from >= 0 ? at < from : item.one.place.line < line;
    });
    const [first] = gone;
    if (!first) return [item];
    const isOne = gone.every(({ eye }) => eye === first.eye);
    if (!isOne || item.one.eye !== null || !isTest(item.one) || isFailedTest(item.one)) return [];
    return [{ ...item, one: { ...item.one, eye: otherEye(first.eye) } }];
  });
}

/** What each reading said that no longer counts, judged by itself so that the line still shows its figure. */
function replacedMeasures(
  judging: Omit<Case, 'values'>,
  all: readonly Taken[],
  current: readonly Measure[],
  context: Context,
): Measure[] {
  const { readings, lenses } = judging.order;
  const key = ({ quantity, eye, place }: Measure): string => `${quantity}.${eye}.${place?.line}`;
  const inUse = new Set(current.filter(({ place }) => place).map(key));
  return readings.flatMap((_, index) => {
    const own = all.filter(({ reading }) => reading === index);
    const values = reduce(own, readings, context.instruments, lenses);
    return measuresOf({ values, ...judging }).filter(
      (one) => one.place && one.outcome !== 'not-read' && !inUse.has(key(one)),
    );
  });
}
