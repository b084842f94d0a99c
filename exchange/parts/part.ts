/** An order or a reading taken apart into single facts, as open formats hold them: a code, a value, a unit. */
import type { Eye, Place } from '../../orders';

export type PartUnit = 'D' | 'prism' | 'deg' | 'mm' | 'words';

/** The facts and their units. Prism is positive base in and base up before the eye it belongs to. */
export const PART_UNITS = {
  sphere: 'D',
  cylinder: 'D',
  axis: 'deg',
  add: 'D',
  'engraved-add': 'D',
  intermediate: 'D',
  'prism-in': 'prism',
  'prism-up': 'prism',
  pd: 'mm',
  'near-pd': 'mm',
  'optical-centres': 'mm',
  height: 'mm',
  'base-curve': 'D',
  'centre-thickness': 'mm',
  'edge-thickness': 'mm',
  'min-thickness': 'mm',
  'segment-width': 'mm',
  'segment-tilt': 'deg',
  warp: 'D',
  'frame-a': 'mm',
  'frame-b': 'mm',
  'frame-dbl': 'mm',
  'frame-ed': 'mm',
  vertex: 'mm',
  panto: 'deg',
  wrap: 'deg',
  impact: 'words',
  cosmetic: 'words',
  marking: 'words',
} as const satisfies Readonly<Record<string, PartUnit>>;

export type PartCode = keyof typeof PART_UNITS;

/** Decimals of a figure for which none were written. */
export const LEAST_DECIMALS: Readonly<Record<PartUnit, number>> = { D: 2, prism: 2, deg: 0, mm: 0, words: 0 };

export interface Part {
  readonly code: PartCode;
  readonly eye: Eye | null;
  /** A figure with its written digits and without a plus, or a word. */
  readonly text: string;
  /** Point of the lens where it was read; null for the usual one. */
  readonly at: string | null;
  /** It was not written so, but follows from what was written. */
  readonly workedOut: boolean;
  /** In its block. */
  readonly place: Place;
}

/** `add 2.00`, as a loss names it. */
export const partInWords = ({ code, text, at }: Pick<Part, 'code' | 'text' | 'at'>): string =>
  `${code.replaceAll('-', ' ')} ${text}${at ? ` at ${at}` : ''}`;

/** Facts of the pair, which no eye has by itself. */
export const PAIR_CODES: ReadonlySet<PartCode> = new Set<PartCode>([
  ...(['frame-a', 'frame-b', 'frame-dbl', 'frame-ed', 'vertex', 'panto', 'wrap'] as const),
]);

/** Facts that may be said for the pair or for each eye. */
export const EITHER_CODES: ReadonlySet<PartCode> = new Set<PartCode>([
  ...(['pd', 'near-pd', 'optical-centres', 'height', 'impact', 'cosmetic', 'marking'] as const),
]);
