/** The arithmetic of one measured thing and its repeats: eighths, the zero, drum and dial differences, the mean. */
import type { Eye } from '../grammar';
import {
  addByClock,
  addByDrum,
  correctedForZero,
  dialShiftOnSlabLine,
  meanPower,
  minusForm,
  type Power,
  type PrismVector,
  prismBeforeEye,
} from '../optics';
import { attempt } from './attempt';
import { tidy } from './exact';
import { asEighth } from './instrument';
import type { AddReading, Instrument, LensMaterial, Ring, SlabReading, TypedPower } from './model';
import type { Part, Step } from './step';
import { asPower } from './values';

/** A reduced value, how it came about, and the value of each repeat. */
export interface Reduced<V> {
  readonly value: V;
  readonly steps: readonly Step[];
  readonly all: readonly V[];
}

export const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;

/**
 * Powers in minus form, dioptres, whatever form they were read in. The zero is what the drum shows with nothing on the
 * stop; it comes off the sphere, since both positions of the drum are off by it. Null where a figure is out of range.
 */
export function reducedPower<Taken extends { readonly value: TypedPower }>(
  list: readonly Taken[],
  zeroFor: (one: Taken) => number,
  instrument: Instrument | null,
): Reduced<Power> | null {
  const steps: Step[] = [];
  const lenses: Power[] = [];
  for (const one of list) {
    const { value } = one;
    const zero = asEighth(zeroFor(one), instrument);
    if (value.form === 'lines') {
      const wide = tidy(value.sphere + value.cylinder);
      steps.push({ step: 'drum', thin: value.sphere, wide, cylinder: value.cylinder });
    }
    const sphere = eighth(value.sphere, 'sphere', instrument, steps);
    const cylinder = cylinderOf(value, sphere, instrument, steps);
    const corrected = attempt(() => tidy(correctedForZero(sphere, zero)));
    if (corrected === null) return null;
    const lens = attempt(() => minusForm(asPower({ ...value, sphere: corrected, cylinder })));
    if (!lens) return null;
    if (zero !== 0) steps.push({ step: 'zero', zero, from: sphere, to: corrected });
    lenses.push(lens);
  }
  if (lenses.length === 1) return { value: lenses[0] as Power, steps, all: lenses };
  return {
    value: meanPower(lenses),
    steps: [...steps, { step: 'mean', of: lenses.map(({ sphere }) => sphere) }],
    all: lenses,
  };
}

/** Of two positions each stands for an eighth by itself, and the cylinder is the way between those. */
function cylinderOf(value: TypedPower, sphere: number, instrument: Instrument | null, steps: Step[]): number {
  if (value.form !== 'lines' && value.form !== 'meridians')
    return eighth(value.cylinder, 'cylinder', instrument, steps);
  const wide = asEighth(tidy(value.sphere + value.cylinder), instrument);
  const taken = tidy(wide - sphere);
  if (taken !== value.cylinder) steps.push({ step: 'eighth', part: 'cylinder', from: value.cylinder, to: taken });
  return taken;
}

function eighth(value: number, part: Part, instrument: Instrument | null, steps: Step[]): number {
  const taken = asEighth(value, instrument);
  if (taken !== value) steps.push({ step: 'eighth', part, from: value, to: taken });
  return taken;
}

/** Adds, dioptres. A constant zero error drops out of a difference, so none is taken off. */
export function reducedAdd(
  list: readonly { readonly value: AddReading }[],
  instrument: Instrument | null,
  material: LensMaterial | null,
): Reduced<number> | null {
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
  return withMean(results, steps);
}

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

/** Prisms, prism dioptres in the examiner’s frame. A target on a ring is taken apart into its two directions. */
export function reducedPrism(
  list: readonly { readonly value: PrismVector; readonly ring: Ring | null }[],
  eye: Eye | null,
): Reduced<PrismVector> {
  const all = list.map(({ value }) => value);
  const steps: Step[] = [];
  for (const { value, ring } of list) {
    const before = eye && ring && attempt(() => prismBeforeEye(value, eye));
    if (ring && before)
      steps.push({ step: 'ring', ring: ring.amount, degrees: ring.degrees, in: tidy(before.in), up: tidy(before.up) });
  }
  const [only, ...others] = all;
  if (only && others.length === 0) return { value: only, steps, all };
  const value = { right: mean(all.map(({ right }) => right)), up: mean(all.map(({ up }) => up)) };
  const sizes = all.map(({ right, up }) => tidy(Math.hypot(right, up)));
  return { value, steps: [...steps, { step: 'mean', of: sizes }], all };
}

/** Half the distance of the outer pins of the usual lens measure, millimetres; with it 1 D on the dial is 1 prism dioptre at 1.53. */
const HALF_SPAN = 10;

/**
 * Slab-offs, prism dioptres, base up positive. Two curves are converted by what the dial moves on such a line; without the
 * index of the lens the plain difference is all there is.
 */
export function reducedSlab(
  list: readonly { readonly value: SlabReading }[],
  material: LensMaterial | null,
): Reduced<number> | null {
  const steps: Step[] = [];
  const results: number[] = [];
  for (const { value } of list) {
    if (value.kind === 'value') {
      results.push(value.value);
      continue;
    }
    const plain = tidy(Math.abs(value.to - value.from));
    const index = material?.index ?? null;
    const size = index === null ? plain : attempt(() => tidy(plain / dialShiftOnSlabLine(1, index, HALF_SPAN)));
    if (size === null) return null;
    const result = value.reverse ? 0 - size : size;
    steps.push({ step: 'slab', from: value.from, to: value.to, plain, index, result });
    results.push(result);
  }
  return withMean(results, steps);
}

/** Lengths, curves, angles. */
export const reducedFigure = (list: readonly number[]): Reduced<number> => withMean(list, []);

function withMean(results: readonly number[], steps: Step[]): Reduced<number> {
  const [only, ...others] = results;
  if (only !== undefined && others.length === 0) return { value: tidy(only), steps, all: results };
  steps.push({ step: 'mean', of: results });
  return { value: tidy(mean(results)), steps, all: results };
}
