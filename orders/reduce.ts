/** From what the instrument showed to the value that is judged: drum differences, eighths, the zero, repeats. */
import type { Eye } from '../grammar';
import { addByClock, addByDrum, meanPower, minusForm, type Power, type PrismVector } from '../optics';
import { attempt } from './attempt';
import { tidy } from './exact';
import type { Place } from './finding';
import { asEighth, isCoarse } from './instrument';
import type { AddReading, Instrument, LensMaterial, Measurement, Reading, TypedPower } from './model';
import { asPower } from './values';

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
}

export type Step =
  | { readonly step: 'drum'; readonly thin: number; readonly wide: number; readonly cylinder: number }
  | {
      readonly step: 'difference';
      readonly from: number;
      readonly to: number;
      readonly result: number;
      readonly surface: string | null;
    }
  | {
      readonly step: 'clock';
      readonly from: number;
      readonly to: number;
      readonly plain: number;
      readonly index: number | null;
      readonly result: number;
    }
  | { readonly step: 'eighth'; readonly part: Part; readonly from: number; readonly to: number }
  | { readonly step: 'zero'; readonly zero: number; readonly from: number; readonly to: number }
  | { readonly step: 'engraved'; readonly value: number }
  | { readonly step: 'mean'; readonly of: readonly number[] };

/** Which figure of a power a step worked on; adds have one figure only. */
export type Part = 'sphere' | 'cylinder' | 'add';

type Values<V> = Partial<Record<Eye | 'pair', Read<V>>>;

/** Everything measured, newest or of one reading, per quantity and eye (`pair` for what belongs to both). */
export interface ReadValues {
  /** At the distance or the reference point, and where the place was not said. */
  readonly power: Values<Power>;
  readonly nearPower: Values<Power>;
  /** At the top of an office lens. */
  readonly topPower: Values<Power>;
  readonly add: Values<number>;
  /** As the lens says it of itself, which is no measurement. */
  readonly engravedAdd: Values<number>;
  /** At the prism point, and where the place was not said. */
  readonly prism: Values<PrismVector>;
  readonly prismElsewhere: Values<PrismVector>;
  readonly figures: Readonly<Partial<Record<FigureQuantity, Values<number>>>>;
  readonly facts: Readonly<Partial<Record<'impact' | 'cosmetic' | 'marking', Read<'passed' | 'failed'>>>>;
}

export type FigureQuantity = Exclude<
  Measurement['quantity'],
  'power' | 'add' | 'prism' | 'impact' | 'cosmetic' | 'marking'
>;

/** What a measurement is a value of. The same quantity at another point of the lens is another one. */
export function slotOf(one: Measurement): string {
  if (one.quantity === 'power') return one.at === 'near-point' ? 'nearPower' : one.at === 'top' ? 'topPower' : 'power';
  if (one.quantity === 'prism') return one.at === null || one.at === 'prism-point' ? 'prism' : 'prismElsewhere';
  if (one.quantity === 'add') return one.value.kind === 'value' && one.value.engraved ? 'engravedAdd' : 'add';
  return one.quantity;
}

export interface Taken {
  readonly one: Measurement;
  readonly reading: number;
}

/**
 * Reduces measurements to one value per quantity and eye. Later ones replace earlier ones, except repeats of the same
 * reading, of which the mean counts.
 * @param material of the lens before each eye; a lens measure is read through its index
 */
export function reduce(
  taken: readonly Taken[],
  readings: readonly Reading[],
  instruments: ReadonlyMap<string, Instrument>,
  material: (eye: Eye) => LensMaterial | null,
): ReadValues {
  const groups = new Map<string, Taken[]>();
  for (const item of taken) {
    const key = `${slotOf(item.one)}.${item.one.eye ?? 'pair'}`;
    const group = groups.get(key);
    if (group && item.one.again && group[0]?.reading === item.reading) group.push(item);
    else groups.set(key, [item]);
  }
  const values = noValues() as {
    power: Values<Power>;
    nearPower: Values<Power>;
    topPower: Values<Power>;
    add: Values<number>;
    engravedAdd: Values<number>;
    prism: Values<PrismVector>;
    prismElsewhere: Values<PrismVector>;
    figures: Partial<Record<FigureQuantity, Values<number>>>;
    facts: Record<string, Read<'passed' | 'failed'>>;
  };
  for (const group of groups.values()) {
    const { one, reading } = group[0] as Taken;
    const side = one.eye ?? 'pair';
    const source = readings[reading] as Reading;
    const instrument = instruments.get(one.with ?? source.with ?? '') ?? null;
    const base = {
      place: one.place,
      reading,
      instrument,
      coarse: isCoarse(instrument),
      at: one.at,
      places: group.map((item) => item.one.place),
    };
    const slot = slotOf(one);
    const all = group.map((item) => item.one);
    if (one.quantity === 'power') {
      const zero = one.corrected ? 0 : (source.zero?.value ?? instrument?.zero ?? 0);
      const read = powers(all as Extract<Measurement, { quantity: 'power' }>[], instrument, zero);
      if (read) values[slot as 'power'][side] = { ...base, ...read };
    } else if (one.quantity === 'add') {
      const read = adds(
        all as Extract<Measurement, { quantity: 'add' }>[],
        instrument,
        one.eye ? material(one.eye) : null,
      );
      if (read) values[slot as 'add'][side] = { ...base, ...read };
    } else if (one.quantity === 'prism') {
      const list = all.map(({ value }) => value as PrismVector);
      values[slot as 'prism'][side] = {
        ...base,
        value: { right: mean(list.map(({ right }) => right)), up: mean(list.map(({ up }) => up)) },
        steps: [],
        all: list,
      };
    } else if (one.quantity === 'impact' || one.quantity === 'cosmetic' || one.quantity === 'marking') {
      values.facts[one.quantity] = { ...base, value: one.value, steps: [], all: [one.value] };
    } else {
      const list = all.map(({ value }) => value as number);
      const steps: Step[] = list.length > 1 ? [{ step: 'mean', of: list }] : [];
      const quantity = one.quantity as FigureQuantity;
      values.figures[quantity] = {
        ...values.figures[quantity],
        [side]: { ...base, value: tidy(mean(list)), steps, all: list },
      };
    }
  }
  dropOutdatedSums(values.figures, taken);
  return values;
}

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
  engravedAdd: {},
  prism: {},
  prismElsewhere: {},
  figures: {},
  facts: {},
});

const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;

function powers(
  list: readonly { readonly value: TypedPower }[],
  instrument: Instrument | null,
  zero: number,
): Pick<Read<Power>, 'value' | 'steps' | 'all'> | null {
  const steps: Step[] = [];
  const lenses: Power[] = [];
  for (const { value } of list) {
    if (value.form === 'lines') {
      const wide = tidy(value.sphere + value.cylinder);
      steps.push({ step: 'drum', thin: value.sphere, wide, cylinder: value.cylinder });
    }
    const sphere = eighth(value.sphere, 'sphere', instrument, steps);
    const cylinder = eighth(value.cylinder, 'cylinder', instrument, steps);
    const corrected = tidy(sphere - zero);
    if (zero !== 0) steps.push({ step: 'zero', zero, from: sphere, to: corrected });
    const lens = attempt(() => minusForm(asPower({ ...value, sphere: corrected, cylinder })));
    if (!lens) return null;
    lenses.push(lens);
  }
  if (lenses.length === 1) return { value: lenses[0] as Power, steps, all: lenses };
  return {
    value: meanPower(lenses),
    steps: [...steps, { step: 'mean', of: lenses.map(({ sphere }) => sphere) }],
    all: lenses,
  };
}

function eighth(value: number, part: Part, instrument: Instrument | null, steps: Step[]): number {
  const taken = asEighth(value, instrument);
  if (taken !== value) steps.push({ step: 'eighth', part, from: value, to: taken });
  return taken;
}

function adds(
  list: readonly { readonly value: AddReading }[],
  instrument: Instrument | null,
  material: LensMaterial | null,
): Pick<Read<number>, 'value' | 'steps' | 'all'> | null {
  const steps: Step[] = [];
  const results: number[] = [];
  for (const { value } of list) {
    const result =
      value.kind === 'value'
        ? eighth(value.value, 'add', instrument, steps)
        : difference(value, instrument, material, steps);
    if (result === null) return null;
    if (value.kind === 'value' && value.engraved) steps.push({ step: 'engraved', value: result });
    results.push(result);
  }
  if (results.length > 1) steps.push({ step: 'mean', of: results });
  return { value: tidy(mean(results)), steps, all: results };
}

/** An add by difference: a constant zero error drops out, so none is taken off. */
function difference(
  value: Exclude<AddReading, { kind: 'value' }>,
  instrument: Instrument | null,
  material: LensMaterial | null,
  steps: Step[],
): number | null {
  if (value.kind === 'drum') {
    const from = eighth(value.from, 'add', instrument, steps);
    const to = eighth(value.to, 'add', instrument, steps);
    const result = attempt(() => tidy(addByDrum(from, to)));
    if (result !== null) steps.push({ step: 'difference', from, to, result, surface: value.surface });
    return result;
  }
  const plain = tidy(value.to - value.from);
  const index = material?.index ?? null;
  // Without an index the plain difference is all there is; the index of most lens measures and of common resin are near.
  const result = index === null ? plain : attempt(() => tidy(addByClock(value.from, value.to, index)));
  if (result !== null) steps.push({ step: 'clock', from: value.from, to: value.to, plain, index, result });
  return result;
}
