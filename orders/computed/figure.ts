/** One shape for whatever is worked out from an order: what it is, what came out, and everything it rests on. */

import type { Eye } from '../../grammar';
import type { EyePrism, MeridianPower, Power } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import type { Unit } from '../limits';
import type { Placed } from '../model';

/** The code of a figure that is worked out. */
export type WorkedCode =
  | 'forms'
  | 'meridians'
  | 'spherical-equivalent'
  | 'near-power'
  | 'intermediate-power'
  | 'power-to-make'
  | 'power-for-vertex'
  | 'working-distance'
  | 'decentration'
  | 'raise'
  | 'blank'
  | 'segment-drop'
  | 'segment-inset'
  | 'near-inset'
  | 'total-inset'
  | 'near-pd'
  | 'drum'
  | 'drum-in-segment'
  | 'ring-in-segment'
  | 'add-error'
  | 'image-jump'
  | 'displacement'
  | 'vertical-imbalance'
  | 'slab-off'
  | 'reverse-slab'
  | 'prism-resultant'
  | 'prism-of-pair'
  | 'prism-by-decentration'
  | 'decentration-for-prism'
  | 'worn-power'
  | 'power-for-wear'
  | 'wrap-prism'
  | 'optical-centre-height'
  | 'thickness'
  | 'weight'
  | 'base-curve-advice'
  | 'base-curve-advice-digital'
  | 'magnification'
  | 'magnification-difference'
  | 'chromatic-aberration'
  | 'reflectance';

/** Null for what has no unit: an index, an Abbe number. */
export type WorkedUnit = Unit | 'g' | 'g/cm3' | 'percent' | null;

/** A number; a power; a power along a meridian; a prism or a displacement, positive inwards and upwards. */
export type WorkedValue = number | Power | MeridianPower | EyePrism;

/** A value with its unit. */
export interface Amount {
  readonly value: WorkedValue;
  readonly unit: WorkedUnit;
}

/** Where an input came from: typed in the order, the table of materials, another figure, or nowhere, and then it is said. */
export type Origin = 'ordered' | 'materials' | 'worked' | 'assumed';

/** A figure that another is worked out from, and where it came from. */
export interface Input extends Amount {
  readonly from: Origin;
}

/** By the names that the formula uses. */
export type Inputs = Readonly<Record<string, Input>>;
export type Amounts = Readonly<Record<string, Amount>>;

/** Why there is no value although the order says enough for one. */
export type Refusal = 'plano-meridian' | 'too-far';

/** A figure worked out from an order, with the way it is made. */
export interface Worked {
  readonly what: WorkedCode;
  /** Null for what belongs to the pair. */
  readonly eye: Eye | null;
  /** Rounded to a ten-thousandth; empty where the figure is refused. */
  readonly values: Amounts;
  readonly refused: Refusal | null;
  /** As it is written at a bench, in the names of the inputs. */
  readonly formula: string;
  readonly inputs: Inputs;
  readonly source: string;
  /** Everything that the order does not say and that was taken as usual. */
  readonly assumed: readonly string[];
}

/** A value on the way to a figure, with what it rests on. */
export interface Known<V> {
  readonly value: V;
  readonly inputs: Inputs;
  readonly assumed: readonly string[];
}

/** What a figure is made of besides its values. */
export interface Basis {
  readonly formula: string;
  readonly inputs: Inputs;
  readonly source: string;
  readonly assumed?: readonly string[];
}

/** A figure, or null where its formula refuses the inputs. */
export function work(what: WorkedCode, eye: Eye | null, basis: Basis, values: () => Amounts): Worked | null {
  const found = attempt(values);
  if (!found) return null;
  const { formula, inputs, source, assumed = [] } = basis;
  return { what, eye, values: found, refused: null, formula, inputs, source, assumed: eachOnce(assumed) };
}

/** Nearly every figure takes nothing or one thing as usual. */
const eachOnce = (words: readonly string[]): readonly string[] => (words.length < 2 ? words : [...new Set(words)]);

/** A value with its unit, rounded to a ten-thousandth; whatever goes on being worked with is not taken from here. */
export const amount = (value: WorkedValue, unit: WorkedUnit): Amount => ({ value: rounded(value), unit });

/** Each shape is spelled out: there are hundreds of values in an order, and copying by name costs more than all formulas. */
function rounded(value: WorkedValue): WorkedValue {
  if (typeof value === 'number') return tidy(value);
  if ('sphere' in value) return { sphere: tidy(value.sphere), cylinder: tidy(value.cylinder), axis: tidy(value.axis) };
  if ('meridian' in value) return { meridian: tidy(value.meridian), power: tidy(value.power) };
  return { in: tidy(value.in), up: tidy(value.up) };
}

export const mm = (value: number | EyePrism): Amount => amount(value, 'mm');
export const dioptres = (value: number | Power | MeridianPower): Amount => amount(value, 'D');
export const prism = (value: number | EyePrism): Amount => amount(value, 'prism');
export const degrees = (value: number): Amount => amount(value, 'deg');
export const percent = (value: number): Amount => amount(value, 'percent');

export const ordered = ({ value, unit }: Amount): Input => ({ value, unit, from: 'ordered' });
export const worked = ({ value, unit }: Amount): Input => ({ value, unit, from: 'worked' });
export const assumed = ({ value, unit }: Amount): Input => ({ value, unit, from: 'assumed' });
export const listed = ({ value, unit }: Amount): Input => ({ value, unit, from: 'materials' });

/** A length that the order states. */
export const length = ({ value }: Placed<number>): Input => ordered(mm(value));

/** All inputs of several steps, in their order. The engine copies in a loop much faster than it spreads. */
export function together(...parts: readonly (Inputs | null | undefined)[]): Inputs {
  const all: Record<string, Input> = {};
  for (const part of parts) {
    for (const name in part) all[name] = part[name] as Input;
  }
  return all;
}
