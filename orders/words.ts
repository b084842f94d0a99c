/** The one place where figures become words: powers, amounts with their unit, prisms with their base. */

import type { Eye } from '../grammar';
import { type EyePrism, type Power, type PrismVector, prismBeforeEye } from '../optics';
import { roundTo, tidy } from './exact';
import type { Unit } from './limits';
import type { Quantity } from './measures/measure';
import type { GuardBand } from './uncertainty';

/** A figure with two decimals, or three where the third says something (eighths). */
export function figure(value: number, decimals = 2): string {
  const rounded = roundTo(value, decimals);
  const finer = roundTo(value, 3);
  const shown = Math.abs(finer - rounded) > 1e-9 ? finer : rounded;
  return Math.abs(shown).toFixed(Math.abs(finer - rounded) > 1e-9 ? 3 : decimals);
}

/** A dioptric figure with its sign: `+2.00`, `-0.625`, `0.00`. */
export function signed(value: number): string {
  const clean = tidy(value);
  return `${clean > 0 ? '+' : clean < 0 ? '-' : ''}${figure(clean)}`;
}

/** An axis as it is written: three digits. */
export const axisFigures = (axis: number): string => String(roundTo(axis, 0)).padStart(3, '0');

/** A power as it is written: `-4.50 -0.75 x 022`, `+1.25 DS`, `plano`. */
export function powerInWords({ sphere, cylinder, axis }: Power): string {
  const first = tidy(sphere) === 0 ? 'plano' : signed(sphere);
  if (tidy(cylinder) === 0) return tidy(sphere) === 0 ? first : `${first} DS`;
  return `${first} ${signed(cylinder)} x ${axisFigures(axis)}`;
}

const UNITS: Readonly<Record<Unit, string>> = { D: 'D', deg: '°', mm: 'mm', prism: 'Δ' };

/** An amount with its unit: `0.12 D`, `5°`, `2.5 mm`, `0.33 Δ`; the bare figure where there is none. */
export function amountInWords(value: number, unit: Unit | null): string {
  if (unit === 'deg') return `${roundTo(Math.abs(value), 1)}°`;
  if (unit === 'mm') return `${roundTo(Math.abs(value), 2)} mm`;
  return unit === null ? figure(value) : `${figure(value)} ${UNITS[unit]}`;
}

/** An ordered or read figure as it is written: powers signed, axes with three digits. */
export function valueInWords(value: number, unit: Unit | null): string {
  if (unit === 'D') return signed(value);
  if (unit === 'deg') return axisFigures(value);
  return unit === 'mm' ? `${roundTo(value, 2)} mm` : amountInWords(value, unit);
}

const QUANTITIES: Readonly<Record<Quantity, string>> = {
  power: 'power',
  cylinder: 'cylinder',
  axis: 'axis',
  add: 'add',
  'upper-add': 'add of the upper segment',
  intermediate: 'intermediate add',
  degression: 'degression',
  prism: 'prism at the prism point',
  'prism-horizontal': 'horizontal prism of the pair',
  'prism-vertical': 'vertical prism of the pair',
  pd: 'PD',
  'near-pd': 'near PD',
  height: 'height',
  'upper-height': 'height of the upper segment',
  'height-difference': 'difference of the heights',
  'segment-width': 'segment width',
  'segment-width-difference': 'difference of the segment widths',
  'segment-tilt': 'tilt',
  'base-curve': 'base curve',
  'centre-thickness': 'centre thickness',
  'edge-thickness': 'edge thickness',
  'min-thickness': 'least thickness',
  warp: 'warp',
  slab: 'slab-off',
  impact: 'impact test',
  cosmetic: 'surface quality',
  marking: 'marking',
};

/** A quantity as it is called at the bench. */
export const quantityInWords = (quantity: Quantity): string => QUANTITIES[quantity];

/** A prism with its base words before one eye: `2.00 in, 0.50 up`; `none` where there is none. */
export const prismInWords = (prism: PrismVector, eye: Eye): string => beforeEyeInWords(prismBeforeEye(prism, eye));

/** The same for a prism that is known before its eye. */
export function beforeEyeInWords(before: EyePrism): string {
  const parts: string[] = [];
  if (tidy(before.in) !== 0) parts.push(`${figure(before.in)} base ${before.in > 0 ? 'in' : 'out'}`);
  if (tidy(before.up) !== 0) parts.push(`${figure(before.up)} base ${before.up > 0 ? 'up' : 'down'}`);
  return parts.length > 0 ? parts.join(', ') : 'none';
}

/** A prism before one eye as it is typed in the notation: `2.00 BI 0.50 BU`; `0` where there is none. */
export function prismAsTyped({ in: inwards, up }: EyePrism): string {
  const parts: string[] = [];
  if (tidy(inwards) !== 0) parts.push(`${figure(inwards)} ${inwards > 0 ? 'BI' : 'BO'}`);
  if (tidy(up) !== 0) parts.push(`${figure(up)} ${up > 0 ? 'BU' : 'BD'}`);
  return parts.length > 0 ? parts.join(' ') : '0';
}

/** A decision rule as JCGM 106 calls it (title from memory, text not seen). */
export const decisionRuleInWords = (guard: GuardBand): string => DECISION_RULES[guard];

const DECISION_RULES: Readonly<Record<GuardBand, string>> = {
  simple: 'simple acceptance',
  'accept-when-sure': 'guarded acceptance',
  'reject-when-sure': 'guarded rejection',
};
