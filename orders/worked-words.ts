/** Worked-out figures in words: what each is called, its values, and how it came about. */

import type { EyePrism } from '../optics';
import type { Amount, Input, Origin, Worked, WorkedCode, WorkedUnit, WorkedValue } from './computed';
import { roundTo, tidy } from './exact';
import { axisFigures, figure, powerInWords, signed } from './words';

/** A worked-out figure in words. */
export interface WorkedWords {
  /** What it is, such as `smallest blank`. */
  readonly title: string;
  /** What came out, or why nothing did. */
  readonly value: string;
  /** Formula and inputs, with what was assumed, on one line. */
  readonly how: string;
}

/** Puts a worked-out figure into words: what it is, its values, and how they are made. */
export function workedInWords({ what, values, refused, formula, inputs, assumed }: Worked): WorkedWords {
  const value = Object.entries(values).map(([name, amount]) => namedValue(name, amount));
  const given = Object.entries(inputs).map(([name, input]) => inputInWords(name, input));
  return {
    title: TITLES[what],
    value: refused ? REFUSALS[refused] : value.join(', '),
    how: [formula, given.join(', '), assumed.length > 0 ? `assumed: ${assumed.join('; ')}` : '']
      .filter(Boolean)
      .join('; '),
  };
}

const TITLES: Readonly<Record<WorkedCode, string>> = {
  forms: 'forms',
  meridians: 'meridians',
  'spherical-equivalent': 'spherical equivalent',
  'near-power': 'near',
  'intermediate-power': 'intermediate',
  'power-to-make': 'to be made',
  'power-for-vertex': 'for the vertex distance of wear',
  'working-distance': 'working distance of the add',
  decentration: 'decentration',
  raise: 'raised',
  blank: 'smallest blank',
  'segment-drop': 'segment top',
  'segment-inset': 'segment',
  'near-inset': 'near centre by convergence',
  'total-inset': 'segment from the boxed centre',
  'near-pd': 'near PD by convergence',
  drum: 'drum',
  'drum-in-segment': 'drum for the add',
  'ring-in-segment': 'target at the reading point of the segment',
  'add-error': 'add with the other surface on the stop',
  'image-jump': 'image jump',
  displacement: 'prism at the reading level',
  'vertical-imbalance': 'vertical imbalance at the reading level',
  'slab-off': 'slab-off',
  'reverse-slab': 'or reverse slab',
  'prism-resultant': 'as one prism',
  'prism-of-pair': 'prism of the pair',
  'prism-by-decentration': 'prism at the middle of the uncut lens',
  'decentration-for-prism': 'optical centre for the prism',
  'worn-power': 'acts in wear as',
  'power-for-wear': 'to order for this position of wear',
  'wrap-prism': 'prism of the wrap',
  'optical-centre-height': 'height of the optical centre for the tilt',
  thickness: 'thickness',
  weight: 'weight',
  'base-curve-advice': 'nominal base curve',
  'base-curve-advice-digital': 'base curve if digitally made',
  magnification: 'spectacle magnification',
  'magnification-difference': 'image of R against L',
  'chromatic-aberration': 'transverse chromatic aberration at the near point',
  reflectance: 'reflectance of each surface',
};

/** Every figure there is. */
export const WORKED_CODES = Object.keys(TITLES) as readonly WorkedCode[];

const REFUSALS = {
  'plano-meridian': 'none: the lens has no power along a meridian to make it with, so it has to be ground',
  'too-far': 'none: the centre would have to move by more than 100 mm',
} as const;

/** Names of values that a reader could not tell apart without. */
const NAMES: Readonly<Record<string, string>> = {
  minus: 'minus form',
  plus: 'plus form',
  every: 'in every meridian',
  withMargin: 'with margin',
  nearHalf: 'near PD of this eye',
  thin: 'thin lines',
  wide: 'wide lines',
  wheel: 'wheel',
  distanceThin: 'distance: thin lines',
  distanceWide: 'wide lines',
  segmentThin: 'segment: thin lines',
  segmentWide: 'wide lines',
  ofDistance: 'distance portion',
  ofSegment: 'segment',
  whole: 'together',
  ring: 'ring',
  base: 'base at',
  centre: 'centre',
  thinnestEdge: 'edge from',
  thickestEdge: 'to',
};

/** Words for a number that may go either way: where it is positive, and where it is negative. */
const WAYS: Readonly<Record<string, readonly [positive: string, negative: string]>> = {
  in: ['in', 'out'],
  up: ['up', 'down'],
  below: ['below the middle', 'above the middle'],
  baseIn: ['base in', 'base out'],
  upBeforeRight: ['more base up before R', 'more base up before L'],
};

function namedValue(name: string, { value, unit }: Amount): string {
  const way = WAYS[name];
  if (typeof value === 'number' && way) {
    const size = valueWithUnit(Math.abs(value), unit);
    return tidy(value) === 0 ? size : `${size} ${value > 0 ? way[0] : way[1]}`;
  }
  const words = name === 'wheel' || name === 'base' ? axisFigures(value as number) : valueWithUnit(value, unit);
  return NAMES[name] ? `${NAMES[name]} ${words}` : words;
}

const ORIGINS: Readonly<Record<Origin, string>> = {
  ordered: '',
  materials: ' (table of materials)',
  worked: ' (worked out)',
  assumed: ' (assumed)',
};

const inputInWords = (name: string, { value, unit, from }: Input): string =>
  `${name} ${valueWithUnit(value, unit)}${ORIGINS[from]}`;

function valueWithUnit(value: WorkedValue, unit: WorkedUnit): string {
  if (typeof value === 'number') return numberWithUnit(value, unit);
  if ('sphere' in value) return powerInWords(value);
  if ('meridian' in value) return `${signed(value.power)} along ${axisFigures(value.meridian)}`;
  return bothWays(value, unit);
}

function numberWithUnit(value: number, unit: WorkedUnit): string {
  switch (unit) {
    case 'D':
      return signed(value);
    case 'deg':
      return `${roundTo(value, 1)}°`;
    case 'mm':
      return `${roundTo(value, 2)} mm`;
    case 'prism':
      return `${value < 0 ? '-' : ''}${figure(value)} Δ`;
    case 'g':
      return `${roundTo(value, 1)} g`;
    case 'g/cm3':
      return `${roundTo(value, 3)} g/cm³`;
    case 'percent':
      return `${roundTo(value, 2)} %`;
    case null:
      return String(roundTo(value, 4));
  }
}

/** A prism with its bases, or a displacement with its directions. */
function bothWays(value: EyePrism, unit: WorkedUnit): string {
  const base = unit === 'prism' ? 'base ' : '';
  const part = (size: number, positive: string, negative: string): string =>
    tidy(size) === 0 ? '' : `${valueWithUnit(Math.abs(size), unit)} ${base}${size > 0 ? positive : negative}`;
  const parts = [part(value.in, 'in', 'out'), part(value.up, 'up', 'down')].filter(Boolean);
  return parts.length > 0 ? parts.join(' and ') : valueWithUnit(0, unit);
}
