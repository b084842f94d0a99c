import { describe, expect, it } from 'vitest';
import { type ToleranceSet, toleranceSetById } from '../../tables';
import {
  addAsPrinted,
  axisAsPrinted,
  cylinderHeadings,
  lensPrismAsPrinted,
  pairPrismAsPrinted,
  plainAsPrinted,
  powerEvidence,
  powerGrid,
} from './support/as-printed';

// Copied a second time, from the accounts and not from the tables: the trade poster of ISO 8980:2004, the study cards
// for ISO 21987 and the lists kept from memory (iso-8980-1-2004-poster, iso-21987-study-cards, *-from-memory).

function set(id: string): ToleranceSet {
  const found = toleranceSetById.get(id);
  if (found === undefined) throw new Error(`no set ${id}`);
  return found;
}

const LOWER_LINES = [
  '> 3.00 ≤ 6.00 | ±0.12 | ±0.12 | ±0.12 | ±0.18 | ±0.25',
  '> 6.00 ≤ 9.00 | ±0.12 | ±0.12 | ±0.18 | ±0.18 | ±0.25',
  '> 9.00 ≤ 12.00 | ±0.18 | ±0.12 | ±0.18 | ±0.25 | ±0.25',
  '> 12.00 ≤ 20.00 | ±0.25 | ±0.18 | ±0.25 | ±0.25 | ±0.25',
  '> 20.00 | ±0.37 | ±0.25 | ±0.25 | ±0.37 | ±0.37',
];

const PROGRESSIVE = [
  '≥ 0.00 ≤ 6.00 | ±0.12 | ±0.12 | ±0.18 | ±0.18 | ±0.25',
  '> 6.00 ≤ 9.00 | ±0.18 | ±0.18 | ±0.18 | ±0.18 | ±0.25',
  '> 9.00 ≤ 12.00 | ±0.18 | ±0.18 | ±0.18 | ±0.25 | ±0.25',
  '> 12.00 ≤ 20.00 | ±0.25 | ±0.18 | ±0.25 | ±0.25 | ±0.25',
  '> 20.00 | ±0.37 | ±0.25 | ±0.25 | ±0.37 | ±0.37',
];

const LENS_PRISM = [
  'horizontal, ordered ≥ 0.00 ≤ 2.00 | 0.25 Δ + 1.0 mm | M',
  'horizontal, ordered > 2.00 ≤ 10.00 | 0.37 Δ + 1.0 mm | M',
  'horizontal, ordered > 10.00 | 0.50 Δ + 1.0 mm | M',
  'vertical, ordered ≥ 0.00 ≤ 2.00 | 0.25 Δ + 0.5 mm | M',
  'vertical, ordered > 2.00 ≤ 10.00 | 0.37 Δ + 0.5 mm | M',
  'vertical, ordered > 10.00 | 0.50 Δ + 0.5 mm | M',
];

describe.each([
  { id: 'iso-8980-2004', evidence: 'S', corner: '±0.25' },
  { id: 'iso-8980-2017', evidence: 'M', corner: '±0.25' },
  { id: 'iso-21987-2017', evidence: 'M', corner: '-' },
])('$id against the printed power tables', ({ id, evidence, corner }) => {
  it('limits each meridian and the cylinder of single-vision and multifocal lenses', () => {
    expect(powerGrid(set(id), 'single-vision-multifocal')).toEqual([
      `≥ 0.00 ≤ 3.00 | ±0.12 | ±0.09 | ±0.12 | ±0.18 | ${corner}`,
      ...LOWER_LINES,
    ]);
    expect(cylinderHeadings(set(id), 'single-vision-multifocal')).toEqual([
      '> 0.00 ≤ 0.75 | > 0.75 ≤ 4.00 | > 4.00 ≤ 6.00 | > 6.00',
    ]);
    expect(powerEvidence(set(id), 'single-vision-multifocal')).toEqual([evidence]);
    expect(set(id).power.map((table) => table.judged)).toEqual(['each-meridian', 'each-meridian']);
  });

  it('has the wider table for progressives from memory', () => {
    expect(powerGrid(set(id), 'progressive')).toEqual(PROGRESSIVE);
    expect(cylinderHeadings(set(id), 'progressive')).toEqual([
      '≥ 0.00 ≤ 0.75 | > 0.75 ≤ 4.00 | > 4.00 ≤ 6.00 | > 6.00',
    ]);
    expect(powerEvidence(set(id), 'progressive')).toEqual(['M']);
  });

  it('has the add from memory', () => {
    expect(addAsPrinted(set(id), 'progressive')).toEqual(['≥ 0.00 ≤ 4.00 | ±0.12 | M', '> 4.00 | ±0.18 | M']);
  });

  it('has the prism of one lens from memory, the shift from the strongest meridian', () => {
    expect(lensPrismAsPrinted(set(id), 'progressive')).toEqual(LENS_PRISM);
    expect(set(id).lensPrism?.map((table) => table.powerOf)).toEqual(['strongest-meridian']);
  });
});

describe('iso-21987-2017, mounted pairs', () => {
  const mounted = set('iso-21987-2017');

  it('limits the axis', () => {
    expect(axisAsPrinted(mounted, 'progressive')).toEqual([
      '≥ 0.00 ≤ 0.125 | not defined | S',
      '> 0.125 ≤ 0.25 | ±16° | S',
      '> 0.25 ≤ 0.50 | ±9° | S',
      '> 0.50 ≤ 0.75 | ±6° | S',
      '> 0.75 ≤ 1.50 | ±4° | S',
      '> 1.50 ≤ 2.50 | ±3° | S',
      '> 2.50 | ±2° | S',
    ]);
  });

  it('limits prism imbalance by ordered prism and power', () => {
    expect(pairPrismAsPrinted(mounted, 'single-vision-multifocal', 'horizontal')).toEqual([
      'ordered ≥ 0.00 ≤ 2.00, power ≥ 0.00 ≤ 3.25 | 0.67 Δ | prism-imbalance pair-difference | M',
      'ordered ≥ 0.00 ≤ 2.00, power > 3.25 | 2.0 mm | prism-imbalance pair-difference | M',
      'ordered > 2.00 ≤ 10.00, power ≥ 0.00 ≤ 3.25 | 1.00 Δ | prism-imbalance pair-difference | M',
      'ordered > 2.00 ≤ 10.00, power > 3.25 | 0.33 Δ + 2.0 mm | prism-imbalance pair-difference | M',
      'ordered > 10.00, power ≥ 0.00 ≤ 3.25 | 1.25 Δ | prism-imbalance pair-difference | M',
      'ordered > 10.00, power > 3.25 | 0.58 Δ + 2.0 mm | prism-imbalance pair-difference | M',
    ]);
    expect(pairPrismAsPrinted(mounted, 'single-vision-multifocal', 'vertical')).toEqual([
      'ordered ≥ 0.00 ≤ 2.00, power ≥ 0.00 ≤ 5.00 | 0.50 Δ | prism-imbalance pair-difference | M',
      'ordered ≥ 0.00 ≤ 2.00, power > 5.00 | 1.0 mm | prism-imbalance pair-difference | M',
      'ordered > 2.00 ≤ 10.00, power ≥ 0.00 ≤ 5.00 | 0.75 Δ | prism-imbalance pair-difference | M',
      'ordered > 2.00 ≤ 10.00, power > 5.00 | 0.25 Δ + 1.0 mm | prism-imbalance pair-difference | M',
      'ordered > 10.00, power ≥ 0.00 ≤ 5.00 | 1.00 Δ | prism-imbalance pair-difference | M',
      'ordered > 10.00, power > 5.00 | 0.50 Δ + 1.0 mm | prism-imbalance pair-difference | M',
    ]);
  });

  it('has no pair limit for progressives', () => {
    expect(mounted.pairPrism?.filter((table) => table.lenses.includes('progressive'))).toEqual([]);
  });

  it('limits positions for each eye', () => {
    expect(plainAsPrinted(mounted)).toEqual([
      'segmentHeight | 1 mm each-eye | S',
      'segmentHeightDifference | 1 mm pair-difference | M',
      'segmentHorizontal | 1 mm each-eye | S',
      'segmentTilt | 2 ° each-eye | S',
      'fittingHeight | 1 mm each-eye | S',
      'fittingHeightDifference | 1 mm pair-difference | M',
      'fittingHorizontal | 1 mm each-eye | S',
      'markTilt | 2 ° each-eye | S',
      'centreThickness | 0.3 mm each-eye when ordered | M',
    ]);
  });
});

describe('iso-8980, uncut lenses', () => {
  it.each([
    { id: 'iso-8980-2004', first: 7 },
    { id: 'iso-8980-2017', first: 14 },
  ])('limits the axis in $id', ({ id, first }) => {
    expect(axisAsPrinted(set(id), 'single-vision-multifocal')).toEqual([
      `≥ 0.00 ≤ 0.25 | ±${first}° | M`,
      '> 0.25 ≤ 0.50 | ±7° | M',
      '> 0.50 ≤ 0.75 | ±5° | M',
      '> 0.75 ≤ 1.50 | ±3° | M',
      '> 1.50 ≤ 2.50 | ±2° | M',
      '> 2.50 | ±2° | M',
    ]);
  });

  it.each([
    { id: 'iso-8980-2004', thickness: 'P' },
    { id: 'iso-8980-2017', thickness: 'M' },
  ])('limits geometry in $id and says nothing about pairs', ({ id, thickness }) => {
    expect(set(id).pairPrism).toBeUndefined();
    expect(plainAsPrinted(set(id))).toEqual([
      'segmentSize | 0.5 mm each-eye | S',
      'segmentSizeDifference | 0.7 mm pair-difference | M',
      `centreThickness | 0.3 mm each-eye when ordered | ${thickness}`,
    ]);
  });
});
