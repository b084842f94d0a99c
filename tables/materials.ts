import type { Evidence } from './evidence';
import type { SourceId } from './sources';

/**
 * A generic lens material. Where the lists give a range, `value` is its middle and `low` and `high` keep its ends.
 * A label such as 1.60 may mean the index on the d line or on the e line, so the label alone fixes neither.
 */
export interface Material {
  /** The word the notation uses. */
  readonly id: string;
  readonly title: string;
  readonly family: 'resin' | 'glass';
  /** Refractive index on the helium d line, 587.56 nm. */
  readonly indexD: MaterialConstant;
  /** Refractive index on the mercury e line, 546.07 nm. */
  readonly indexE: MaterialConstant;
  /** Abbe number on the d line. */
  readonly abbe: MaterialConstant;
  /** Grams per cubic centimetre. */
  readonly density: MaterialConstant;
  /** Other ways the trade writes the material, in lower case. No name that belongs to one maker's range. */
  readonly spellings: readonly string[];
}

export interface MaterialConstant {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly source: SourceId;
  readonly evidence: Evidence;
  readonly note?: string;
}

const seen = { source: 'opticianry-course-materials', evidence: 'secondary' } as const;
const remembered = { source: 'material-handbooks-from-memory', evidence: 'memory' } as const;
const midIndex = { source: 'mid-index-resin-from-memory', evidence: 'memory' } as const;

export const materials: readonly Material[] = [
  {
    id: 'resin-1.50',
    title: 'allyl diglycol carbonate',
    family: 'resin',
    indexD: { value: 1.498, ...seen },
    indexE: { value: 1.5, ...remembered },
    abbe: { value: 58, ...remembered },
    density: { value: 1.32, ...remembered },
    spellings: ['cr-39', 'cr39', 'cr 39', 'adc', 'allyl diglycol carbonate', 'hard resin', '1.50', '1.5', '1.498'],
  },
  {
    id: 'resin-1.53',
    title: 'urethane-based resin 1.53',
    family: 'resin',
    indexD: { value: 1.531, low: 1.53, high: 1.532, ...remembered },
    indexE: { value: 1.533, ...remembered },
    abbe: { value: 44, low: 43, high: 45, ...remembered },
    density: { value: 1.11, ...remembered },
    spellings: ['1.53', 'urethane', 'urethane 1.53'],
  },
  {
    id: 'resin-1.56',
    title: 'mid-index resin 1.56',
    family: 'resin',
    indexD: { value: 1.5545, low: 1.553, high: 1.556, ...midIndex },
    indexE: { value: 1.558, low: 1.556, high: 1.56, ...midIndex },
    abbe: { value: 37, low: 36, high: 38, ...midIndex },
    density: { value: 1.275, low: 1.27, high: 1.28, ...midIndex },
    spellings: ['1.56', 'mid-index', 'mid index'],
  },
  {
    id: 'polycarbonate',
    title: 'polycarbonate',
    family: 'resin',
    indexD: { value: 1.586, ...seen },
    indexE: { value: 1.589, ...remembered },
    abbe: { value: 30, ...remembered },
    density: { value: 1.2, ...remembered },
    spellings: ['poly', 'polycarb', 'pc', '1.59', '1.586'],
  },
  {
    id: 'resin-1.60',
    title: 'thiourethane resin 1.60',
    family: 'resin',
    indexD: { value: 1.592, ...remembered },
    indexE: { value: 1.5985, low: 1.597, high: 1.6, ...remembered },
    abbe: { value: 41, ...remembered },
    density: { value: 1.3, ...remembered },
    spellings: ['1.60', '1.6', 'hi-index 1.60'],
  },
  {
    id: 'resin-1.67',
    title: 'thiourethane resin 1.67',
    family: 'resin',
    indexD: { value: 1.66, ...remembered },
    indexE: { value: 1.668, ...remembered },
    abbe: { value: 32, ...remembered },
    density: { value: 1.35, ...remembered },
    spellings: ['1.67', '1.66', 'hi-index 1.67'],
  },
  {
    id: 'resin-1.74',
    title: 'episulphide resin 1.74',
    family: 'resin',
    indexD: { value: 1.735, low: 1.732, high: 1.738, ...remembered },
    indexE: { value: 1.739, low: 1.738, high: 1.74, ...remembered },
    abbe: { value: 32.5, low: 32, high: 33, ...remembered },
    density: { value: 1.465, low: 1.46, high: 1.47, ...remembered },
    spellings: ['1.74', '1.73', 'hi-index 1.74'],
  },
  {
    id: 'glass-1.52',
    title: 'spectacle crown glass',
    family: 'glass',
    indexD: { value: 1.523, ...seen },
    indexE: { value: 1.525, ...remembered },
    abbe: { value: 58.5, low: 58, high: 59, ...remembered },
    density: { value: 2.54, ...remembered },
    spellings: ['crown', 'crown glass', 'spectacle crown', 'glass', '1.523'],
  },
  {
    id: 'glass-1.60',
    title: 'mid-index glass 1.60',
    family: 'glass',
    indexD: { value: 1.6, ...remembered },
    indexE: { value: 1.604, ...remembered },
    abbe: { value: 41.5, low: 41, high: 42, ...remembered },
    density: { value: 2.615, low: 2.6, high: 2.63, ...remembered },
    spellings: ['glass 1.60', 'glass 1.6'],
  },
  {
    id: 'glass-1.70',
    title: 'high-index glass 1.70',
    family: 'glass',
    indexD: { value: 1.7, ...remembered },
    indexE: { value: 1.705, ...remembered },
    abbe: { value: 40.5, low: 39, high: 42, ...remembered, note: 'Older melts 30 to 35.' },
    density: { value: 3.095, low: 2.99, high: 3.2, ...remembered },
    spellings: ['glass 1.70', 'glass 1.7'],
  },
  {
    id: 'glass-1.80',
    title: 'high-index glass 1.80',
    family: 'glass',
    indexD: { value: 1.802, ...remembered },
    indexE: { value: 1.807, ...remembered },
    abbe: { value: 34.5, low: 34, high: 35, ...remembered },
    density: { value: 3.64, low: 3.62, high: 3.66, ...remembered },
    spellings: ['glass 1.80', 'glass 1.8'],
  },
  {
    id: 'glass-1.90',
    title: 'high-index glass 1.90',
    family: 'glass',
    indexD: { value: 1.885, ...remembered },
    indexE: { value: 1.893, ...remembered },
    abbe: { value: 30.5, low: 30, high: 31, ...remembered },
    density: { value: 4.005, low: 3.99, high: 4.02, ...remembered },
    spellings: ['glass 1.90', 'glass 1.9'],
  },
];
