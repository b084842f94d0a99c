import { describe, expect, it } from 'vitest';
import { type ToleranceSet, toleranceSetById } from '../../tables';
import {
  addAsPrinted,
  axisAsPrinted,
  lensPrismAsPrinted,
  pairPrismAsPrinted,
  plainAsPrinted,
  powerAsPrinted,
} from './support/as-printed';

// Copied a second time, from the accounts of the standard and not from the tables: the 2015 reference guide, the 2010
// summary and the reproduction of 1999 (z80.1-2015-reference-guide, z80.1-2010-summary, z80.1-1999-page).

function set(id: string): ToleranceSet {
  const found = toleranceSetById.get(id);
  if (found === undefined) throw new Error(`no set ${id}`);
  return found;
}

const SINGLE_VISION = [
  '≥ 0.00 ≤ 6.50 | ±0.13 | S',
  '  cyl ≥ 0.00 ≤ 2.00 | ±0.13 | S',
  '  cyl > 2.00 ≤ 4.50 | ±0.15 | S',
  '  cyl > 4.50 | 4 % of cylinder | S',
  '> 6.50 | 2 % of meridian | S',
  '  cyl ≥ 0.00 ≤ 2.00 | ±0.13 | S',
  '  cyl > 2.00 ≤ 4.50 | ±0.15 | S',
  '  cyl > 4.50 | 4 % of cylinder | S',
];

const PROGRESSIVE = [
  '≥ 0.00 ≤ 8.00 | ±0.16 | S',
  '  cyl ≥ 0.00 ≤ 2.00 | ±0.16 | S',
  '  cyl > 2.00 ≤ 3.50 | ±0.18 | S',
  '  cyl > 3.50 | 5 % of cylinder | S',
  '> 8.00 | 2 % of meridian | S',
  '  cyl ≥ 0.00 ≤ 2.00 | ±0.16 | S',
  '  cyl > 2.00 ≤ 3.50 | ±0.18 | S',
  '  cyl > 3.50 | 5 % of cylinder | S',
];

const AXIS = [
  '≥ 0.00 < 0.12 | not defined | S',
  '≥ 0.12 ≤ 0.25 | ±14° | S',
  '> 0.25 ≤ 0.50 | ±7° | S',
  '> 0.50 ≤ 0.75 | ±5° | S',
  '> 0.75 ≤ 1.50 | ±3° | S',
  '> 1.50 | ±2° | S',
];

const AXIS_1999 = [
  '≥ 0.00 < 0.12 | not defined | S',
  '≥ 0.12 ≤ 0.37 | ±7° | S',
  '> 0.37 ≤ 0.75 | ±5° | S',
  '> 0.75 ≤ 1.50 | ±3° | S',
  '> 1.50 | ±2° | S',
];

const ADD = ['≥ 0.00 ≤ 4.00 | ±0.12 | S', '> 4.00 | ±0.18 | S'];

describe.each(['z80.1-2015', 'z80.1-2010'])('%s against the printed tables', (id) => {
  it('limits the strongest meridian and the cylinder', () => {
    expect(powerAsPrinted(set(id), 'single-vision-multifocal')).toEqual(SINGLE_VISION);
    expect(powerAsPrinted(set(id), 'progressive')).toEqual(PROGRESSIVE);
    expect(set(id).power.map((table) => table.judged)).toEqual(['strongest-meridian', 'strongest-meridian']);
  });

  it('limits the axis by the cylinder, for all lenses', () => {
    expect(axisAsPrinted(set(id), 'single-vision-multifocal')).toEqual(AXIS);
    expect(axisAsPrinted(set(id), 'progressive')).toEqual(AXIS);
  });

  it('limits the add', () => {
    expect(addAsPrinted(set(id), 'single-vision-multifocal')).toEqual(ADD);
    expect(addAsPrinted(set(id), 'progressive')).toEqual(ADD);
  });

  it('lets an unmounted lens pass on either limit', () => {
    const grade = id === 'z80.1-2010' ? 'P' : 'S';
    expect(lensPrismAsPrinted(set(id), 'progressive')).toEqual([
      `resultant, ordered ≥ 0.00 | 0.33 Δ or 1.0 mm | ${grade}`,
    ]);
  });

  it('limits the mounted pair by bands of power', () => {
    expect(pairPrismAsPrinted(set(id), 'single-vision-multifocal', 'vertical')).toEqual([
      '≥ 0.00 ≤ 3.375 | 0.33 Δ | prism-imbalance pair-total | S',
      '> 3.375 | 1.0 mm | height-difference pair-difference | S',
    ]);
    expect(pairPrismAsPrinted(set(id), 'single-vision-multifocal', 'horizontal')).toEqual([
      '≥ 0.00 ≤ 2.75 | 0.67 Δ | prism-imbalance pair-total | S',
      '> 2.75 | 2.5 mm | distance-pd pair-total | S',
    ]);
  });

  it('marks the rows for mounted progressives as memory', () => {
    expect(pairPrismAsPrinted(set(id), 'progressive', 'vertical')).toEqual([
      '≥ 0.00 ≤ 3.375 | 0.33 Δ | prism-imbalance pair-total | M',
      '> 3.375 | 1.0 mm | reference-point-height each-eye | M',
    ]);
    expect(pairPrismAsPrinted(set(id), 'progressive', 'horizontal')).toEqual([
      '≥ 0.00 ≤ 3.75 | 0.67 Δ | prism-imbalance pair-total | M',
      '> 3.75 | 1.0 mm | monocular-pd each-eye | M',
    ]);
  });

  it('limits segments, fitting points and physical items', () => {
    expect(plainAsPrinted(set(id))).toEqual([
      'segmentHeight | 1 mm each-eye | S',
      'segmentHeightDifference | 1 mm pair-difference | S',
      'segmentHorizontal | 2.5 mm pair-total | S',
      'segmentTilt | 2 ° each-eye | S',
      'segmentSize | 0.5 mm each-eye | M',
      'segmentSizeDifference | 0.7 mm pair-difference | M',
      'fittingHeight | 1 mm each-eye | M',
      'fittingHeightDifference | 1 mm pair-difference | M',
      'fittingHorizontal | 1 mm each-eye | M',
      'markTilt | 2 ° each-eye | M',
      'baseCurve | 0.75 D each-eye when ordered | S',
      'centreThickness | 0.3 mm each-eye when ordered | S',
      'warp | 1 D each-eye | S',
    ]);
  });
});

describe('z80.1-1999 against the printed tables', () => {
  const old = set('z80.1-1999');

  it('judges progressives like all other lenses', () => {
    expect(powerAsPrinted(old, 'single-vision-multifocal')).toEqual(SINGLE_VISION);
    expect(powerAsPrinted(old, 'progressive')).toEqual(SINGLE_VISION);
  });

  it('has the finer axis limits and the same add', () => {
    expect(axisAsPrinted(old, 'progressive')).toEqual(AXIS_1999);
    expect(addAsPrinted(old, 'progressive')).toEqual(ADD);
  });

  it('has the rows for mounted progressives, and those for other pairs from memory', () => {
    expect(pairPrismAsPrinted(old, 'progressive', 'horizontal')).toEqual([
      '≥ 0.00 ≤ 3.75 | 0.67 Δ | prism-imbalance pair-total | S',
      '> 3.75 | 1.0 mm | monocular-pd each-eye | S',
    ]);
    expect(pairPrismAsPrinted(old, 'progressive', 'vertical')).toEqual([
      '≥ 0.00 ≤ 3.375 | 0.33 Δ | prism-imbalance pair-total | S',
      '> 3.375 | 1.0 mm | reference-point-height each-eye | S',
    ]);
    expect(pairPrismAsPrinted(old, 'single-vision-multifocal', 'horizontal')).toEqual([
      '≥ 0.00 ≤ 2.75 | 0.67 Δ | prism-imbalance pair-total | M',
      '> 2.75 | 2.5 mm | distance-pd pair-total | M',
    ]);
    expect(pairPrismAsPrinted(old, 'single-vision-multifocal', 'vertical')).toEqual([
      '≥ 0.00 ≤ 3.375 | 0.33 Δ | prism-imbalance pair-total | M',
      '> 3.375 | 1.0 mm | height-difference pair-difference | M',
    ]);
  });

  it('leaves out what was not seen', () => {
    expect(old.lensPrism).toBeUndefined();
    expect(plainAsPrinted(old)).toEqual([
      'segmentHeight | 1 mm each-eye | S',
      'segmentHorizontal | 2.5 mm pair-total | M',
      'segmentSize | 0.5 mm each-eye | S',
      'segmentSizeDifference | 0.7 mm pair-difference | S',
      'fittingHeight | 1 mm each-eye | S',
      'baseCurve | 0.75 D each-eye when ordered | S',
      'centreThickness | 0.3 mm each-eye when ordered | S',
      'warp | 1 D each-eye | M',
    ]);
  });
});
