import type { Evidence } from './evidence';
import type { SourceId } from './sources';
import type { Band } from './standards/tolerance-set';

/**
 * What a focimeter may be wrong by. Half of a usual lens tolerance is spent here, so a reading near its limit is not
 * decisive. Errors are either way; bands are entered with the absolute power or prism of the test lens.
 */
export interface FocimeterLimits {
  readonly title: string;
  readonly cautions: readonly string[];
  /** Instruments that indicate continuously, by vertex power in dioptres. */
  readonly vertexPower: readonly InstrumentRow[];
  /** Instruments that indicate continuously, by prism in prism dioptres. */
  readonly prism: readonly InstrumentRow[];
  /** Instruments that round their display to a step, on test lenses of a whole multiple of 0.25 D. */
  readonly rounding: readonly RoundingTable[];
  readonly single: readonly InstrumentLimit[];
}

export interface InstrumentCell {
  readonly source: SourceId;
  readonly evidence: Evidence;
  readonly note?: string;
}

export interface InstrumentRow extends InstrumentCell {
  readonly band: Band;
  readonly limit: number;
}

export interface RoundingTable {
  /** Step of the display in dioptres. */
  readonly step: number;
  readonly rows: readonly RoundingRow[];
}

export interface RoundingRow extends InstrumentCell {
  readonly band: Band;
  /** Allowed difference between display and nominal, in dioptres. Absent where the cell could not be read. */
  readonly limit?: number;
}

export interface InstrumentLimit extends InstrumentCell {
  readonly item:
    | 'zero'
    | 'zero-on-0.01-display'
    | 'residual-prism'
    | 'parallax'
    | 'ink-mark'
    | 'axis-marker'
    | 'optical-centre-mark';
  readonly limit: number;
  readonly unit: 'D' | 'prism-dioptre' | 'mm' | 'deg';
}

const seen = { source: 'iso-8598-1996', evidence: 'published' } as const;
const hidden = { source: 'iso-8598-1996', evidence: 'memory', note: 'The cell is hidden in the copy.' } as const;
const rule = { source: 'focimeter-verification-rule', evidence: 'secondary' } as const;
const remembered = { source: 'iso-8598-from-memory', evidence: 'memory' } as const;

export const focimeterLimits: FocimeterLimits = {
  title: 'ISO 8598:1996, focimeters',
  cautions: [
    'The 2014 edition (ISO 8598-1) was not seen; whether it changed a figure is unknown.',
    'The calibration certificate of the instrument knows better.',
  ],
  vertexPower: [
    { band: { atLeast: 0, atMost: 5 }, limit: 0.06, ...seen },
    { band: { above: 5, atMost: 10 }, limit: 0.09, ...seen },
    { band: { above: 10, atMost: 15 }, limit: 0.12, ...seen },
    { band: { above: 15, atMost: 20 }, limit: 0.18, ...seen },
    { band: { above: 20 }, limit: 0.25, ...seen },
  ],
  prism: [
    { band: { above: 0, atMost: 5 }, limit: 0.1, ...seen },
    {
      band: { above: 5, atMost: 10 },
      limit: 0.2,
      source: 'iso-8598-1996',
      evidence: 'memory',
      note: 'The cell is hidden in the copy; inferred from its neighbours, and memory agrees.',
    },
    { band: { above: 10, atMost: 15 }, limit: 0.3, ...seen },
    { band: { above: 15, atMost: 20 }, limit: 0.4, ...seen },
    { band: { above: 20 }, limit: 0.5, ...seen },
  ],
  rounding: [
    {
      step: 0.25,
      rows: [
        { band: { atLeast: 0, atMost: 5 }, limit: 0, ...seen },
        { band: { above: 5, atMost: 10 }, ...hidden },
        { band: { above: 10, atMost: 15 }, limit: 0, ...seen },
        { band: { above: 15 }, ...hidden },
      ],
    },
    {
      step: 0.125,
      rows: [
        { band: { atLeast: 0, atMost: 5 }, limit: 0, ...seen },
        { band: { above: 5, atMost: 10 }, limit: 0.125, ...seen },
        { band: { above: 10, atMost: 15 }, limit: 0.125, ...seen },
        { band: { above: 15 }, ...hidden },
      ],
    },
  ],
  single: [
    { item: 'zero', limit: 0.03, unit: 'D', ...rule, note: 'Chinese national rule.' },
    { item: 'zero-on-0.01-display', limit: 0.02, unit: 'D', ...rule, note: 'After warming up, sphere and cylinder.' },
    { item: 'residual-prism', limit: 0.1, unit: 'prism-dioptre', ...rule, note: 'With no lens on the stop.' },
    { item: 'parallax', limit: 0.1, unit: 'prism-dioptre', ...rule },
    { item: 'ink-mark', limit: 0.5, unit: 'mm', ...rule },
    { item: 'axis-marker', limit: 1, unit: 'deg', ...remembered },
    { item: 'optical-centre-mark', limit: 0.4, unit: 'mm', ...remembered },
  ],
};
