/** From what the instrument showed to the values that are judged: the newest of each quantity, repeats put together. */
import type { Eye } from '../grammar';
import type { Power, PrismVector } from '../optics';
import type { Place } from './finding';
import { instrumentOfLine, isCoarse, zeroOf } from './instrument';
import type { Instrument, Measurement, OrderedLens, PerEye, PrismPart, Reading } from './model';
import { isElsewhere, slotOf } from './reading-places';
import { type Reduced, reducedAdd, reducedFigure, reducedPower, reducedPrism, reducedSlab } from './reduced-figures';
import { segmentKindOf } from './segment-kind';
import type { Step } from './step';
import { isTest, standingTests, type TestQuantity, type TestResult } from './test-results';

export type { Part, Step } from './step';

/** A measured value with the way it came about. */
export interface Read<V> {
  readonly value: V;
  readonly place: Place;
  /** Index of the reading in the order. */
  readonly reading: number;
  readonly instrument: Instrument | null;
  /** The instrument shows only eighths or quarters. */
  readonly coarse: boolean;
  readonly at: string | null;
  /** What was done to the typed figure, in the order it was done. */
  readonly steps: readonly Step[];
  /** The value of each repeat and where it stands; one for a single measurement. */
  readonly all: readonly V[];
  readonly places: readonly Place[];
  /** Of a prism, the parts that were not mentioned each time. */
  readonly unsaid?: readonly PrismPart[];
  /** Of a tilt whose side was not said each time. */
  readonly unsided?: true;
  /** Of a passed test, the failed one of the same lens that it came after. */
  readonly after?: Place;
}

type Values<V> = Partial<Record<Eye | 'pair', Read<V>>>;

/** Everything measured, newest or of one reading, per quantity and eye (`pair` for what belongs to both). */
export interface ReadValues {
  /** At the distance or the reference point, and where the place was not said. */
  readonly power: Values<Power>;
  readonly nearPower: Values<Power>;
  /** At the top of an office lens. */
  readonly topPower: Values<Power>;
  /** By the focimeter, or as a figure without a word of how it was taken. */
  readonly add: Values<number>;
  /** By a lens measure. */
  readonly clockAdd: Values<number>;
  /** In the upper one of two segments. */
  readonly upperAdd: Values<number>;
  /** As the lens says it of itself, which is no measurement. */
  readonly engravedAdd: Values<number>;
  /** At the prism point, and where the place was not said. */
  readonly prism: Values<PrismVector>;
  readonly prismElsewhere: Values<PrismVector>;
  readonly figures: Readonly<Partial<Record<FigureQuantity, Values<number>>>>;
  readonly facts: Readonly<Partial<Record<TestQuantity, Values<TestResult>>>>;
}

export type FigureQuantity =
  | Exclude<Measurement['quantity'], 'power' | 'add' | 'prism' | TestQuantity>
  /** The height of the upper one of two segments. */
  | 'upper-height';

export interface Taken {
  readonly one: Measurement;
  readonly reading: number;
}

type Of<Q extends Measurement['quantity']> = Extract<Measurement, { quantity: Q }>;

/**
 * Reduces measurements to one value per quantity and eye: dioptres, prism dioptres in the examiner’s frame, millimetres,
 * degrees. Later ones replace earlier ones, except repeats of the same reading, of which the mean counts. A lens measure
 * is read through the index of the lens before that eye, and says nothing of a segment it cannot feel.
 */
export function reduce(
  taken: readonly Taken[],
  readings: readonly Reading[],
  instruments: ReadonlyMap<string, Instrument>,
  lenses: PerEye<OrderedLens>,
): ReadValues {
  const values = noValues() as Writable;
  for (const [slot, sides] of groupsOf(taken, lenses)) {
    for (const side of SIDES) {
      const group = sides[side];
      if (group) putReduced(values, slot, side, group, { readings, instruments, lenses });
    }
  }
  for (const { side, item, after } of standingTests(taken))
    putReduced(values, item.one.quantity, side, [item], { readings, instruments, lenses, after });
  dropOutdatedSums(values.figures as Partial<Record<FigureQuantity, Values<number>>>, taken);
  return values as unknown as ReadValues;
}

type Writable = { -readonly [K in keyof ReadValues]: Record<string, unknown> };
type Side = Eye | 'pair';
type Group = readonly [Taken, ...Taken[]];

const SIDES: readonly Side[] = ['R', 'L', 'pair'];

interface Bench {
  readonly readings: readonly Reading[];
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly lenses: PerEye<OrderedLens>;
  readonly after?: Place | null;
}

function putReduced(values: Writable, slot: string, side: Side, group: Group, bench: Bench): void {
  const [{ one, reading }] = group;
  const source = bench.readings[reading] as Reading;
  // The instrument of a reading is its focimeter; a rule or a lens measure is named in its own line.
  const instrument = isFocimetric(one) || one.with !== null ? instrumentOfLine(one, source, bench.instruments) : null;
  const base: Base = {
    place: one.place,
    reading,
    instrument,
    coarse: isClock(one) || isCoarse(instrument),
    at: one.at,
    places: group.map((item) => item.one.place),
  };
  const all: unknown = group.map((item) => item.one);
  if (one.quantity === 'power') {
    const zero = (each: Of<'power'>): number => zeroOf(each, source, instrument);
    const read = reducedPower(all as Of<'power'>[], zero, instrument);
    if (read) values[slot as 'power'][side] = joined(base, read);
  } else if (one.quantity === 'add') {
    const material = one.eye ? (bench.lenses[one.eye].material?.value ?? null) : null;
    const read = reducedAdd(all as Of<'add'>[], instrument, material);
    if (read) values[slot as 'add'][side] = joined(base, read);
  } else if (one.quantity === 'slab') {
    const material = one.eye ? (bench.lenses[one.eye].material?.value ?? null) : null;
    const read = reducedSlab(all as Of<'slab'>[], material);
    const sides = (values.figures.slab ?? {}) as Record<string, unknown>;
    if (read) sides[side] = joined(base, read);
    values.figures.slab = sides;
  } else if (one.quantity === 'prism') {
    const prisms = all as Of<'prism'>[];
    const whole = joined(base, reducedPrism(prisms, one.eye));
    const isWhole = prisms.every(({ unsaid }) => unsaid === undefined);
    values[slot as 'prism'][side] = isWhole ? whole : { ...whole, unsaid: prisms.flatMap((each) => each.unsaid ?? []) };
  } else if (isTest(one)) {
    const read = joined(base, { value: one.value, steps: [], all: [one.value] });
    const sides = (values.facts[one.quantity] ?? {}) as Record<string, unknown>;
    sides[side] = bench.after ? { ...read, after: bench.after } : read;
    values.facts[one.quantity] = sides;
  } else {
    const read = reducedFigure(
      (all as Of<Exclude<FigureQuantity, 'upper-height' | 'slab'>>[]).map(({ value }) => value),
    );
    const sides = (values.figures[slot] ?? {}) as Record<string, unknown>;
    const isUnsided = group.some((item) => item.one.quantity === 'segment-tilt' && item.one.unsided);
    sides[side] = isUnsided ? { ...joined(base, read), unsided: true } : joined(base, read);
    values.figures[slot] = sides;
  }
}

type Base = Omit<Read<unknown>, 'value' | 'steps' | 'all'>;

/** Field by field, since the engine takes a hundred times as long to put one spread behind another. */
const joined = <V>(
  { place, reading, instrument, coarse, at, places }: Base,
  { value, steps, all }: Reduced<V>,
): Read<V> => ({ value, place, reading, instrument, coarse, at, steps, all, places });

/** What counts of each quantity and eye: the newest, together with its repeats. */
function groupsOf(
  taken: readonly Taken[],
  lenses: PerEye<OrderedLens>,
): ReadonlyMap<string, Readonly<Record<Side, Group | null>>> {
  const groups = new Map<string, Record<Side, [Taken, ...Taken[]] | null>>();
  for (const item of taken) {
    const { one, reading } = item;
    const slot = slotOf(one);
    if (isElsewhere(slot) || isTest(one) || feelsNothing(one, lenses) || feelsSlab(one, lenses)) continue;
    const side = one.eye ?? 'pair';
    let sides = groups.get(slot);
    if (!sides) {
      sides = { R: null, L: null, pair: null };
      groups.set(slot, sides);
    }
    const group = sides[side];
    if (group && one.again && group[0].reading === reading) group.push(item);
    else sides[side] = [item];
  }
  return groups;
}

const isClock = (one: Measurement): boolean => one.quantity === 'add' && one.value.kind === 'clock';

/** What a focimeter shows, as against a rule, a gauge or a lens measure. */
export const isFocimetric = (one: Measurement): boolean =>
  one.quantity === 'power' || one.quantity === 'prism' || (one.quantity === 'add' && !isClock(one));

/** The pins of a lens measure glide over a fused segment as if it were not there. */
export const feelsNothing = (one: Measurement, lenses: PerEye<OrderedLens>): boolean =>
  one.quantity === 'add' &&
  one.value.kind === 'clock' &&
  one.eye !== null &&
  segmentKindOf(lenses[one.eye]) === 'fused';

/** On a lens with a slab-off two curves may be those of its line, so they are taken for no add and for no warp. */
export const feelsSlab = (one: Measurement, lenses: PerEye<OrderedLens>): boolean =>
  one.eye !== null &&
  lenses[one.eye].slab !== null &&
  (one.quantity === 'warp' || (one.quantity === 'add' && one.value.kind === 'clock'));

/** A sum over both eyes is out of date once each eye was read by itself in a later reading. */
function dropOutdatedSums(figures: Partial<Record<FigureQuantity, Values<number>>>, taken: readonly Taken[]): void {
  for (const [quantity, { pair, R, L }] of Object.entries(figures)) {
    if (!pair || !R || !L) continue;
    const rank = (read: Read<number>): number => taken.findIndex(({ one }) => one.place === read.place);
    const isLater = (read: Read<number>): boolean => read.reading !== pair.reading && rank(read) > rank(pair);
    if (isLater(R) && isLater(L)) figures[quantity as FigureQuantity] = { R, L };
  }
}

/** Nothing measured. */
export const noValues = (): ReadValues => ({
  power: {},
  nearPower: {},
  topPower: {},
  add: {},
  clockAdd: {},
  upperAdd: {},
  engravedAdd: {},
  prism: {},
  prismElsewhere: {},
  figures: {},
  facts: {},
});
