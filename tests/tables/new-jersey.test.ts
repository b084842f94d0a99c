import { expect, it } from 'vitest';
import { toleranceSetById } from '../../tables';
import {
  axisAsPrinted,
  lensPrismAsPrinted,
  pairPrismAsPrinted,
  plainAsPrinted,
  powerAsPrinted,
} from './support/as-printed';

// Copied a second time from the account of N.J.A.C. 13:35-5.2 (new-jersey-13-35-5.2): sphere 0 to 6.00 ±0.12, 6.25 to
// 12.00 2 %, above ±0.25; cylinder ±0.12; axis 0.12-0.37 ±3°, 0.50-1.00 ±2°, from 1.12 ±1°; prism 0.25 each, 0.50 total.

const rule = toleranceSetById.get('nj-13-35-5.2');
if (rule === undefined) throw new Error('the set is missing');

it('limits the power of all lenses alike', () => {
  const lines = [
    '≥ 0.00 ≤ 6.00 | ±0.12 | P',
    '  cyl ≥ 0.00 | ±0.12 | P',
    '> 6.00 ≤ 12.00 | 2 % of meridian | P',
    '  cyl ≥ 0.00 | ±0.12 | P',
    '> 12.00 | ±0.25 | P',
    '  cyl ≥ 0.00 | ±0.12 | P',
  ];
  expect(powerAsPrinted(rule, 'single-vision-multifocal')).toEqual(lines);
  expect(powerAsPrinted(rule, 'progressive')).toEqual(lines);
});

it('limits the axis', () => {
  expect(axisAsPrinted(rule, 'progressive')).toEqual([
    '≥ 0.00 < 0.12 | not defined | P',
    '≥ 0.12 ≤ 0.37 | ±3° | P',
    '> 0.37 ≤ 1.00 | ±2° | P',
    '> 1.00 | ±1° | P',
  ]);
});

it('limits prism for each lens and in total, both ways', () => {
  expect(lensPrismAsPrinted(rule, 'progressive')).toEqual([
    'horizontal, ordered ≥ 0.00 | 0.25 Δ | P',
    'vertical, ordered ≥ 0.00 | 0.25 Δ | P',
  ]);
  for (const component of ['horizontal', 'vertical'] as const) {
    expect(pairPrismAsPrinted(rule, 'progressive', component)).toEqual([
      '≥ 0.00 | 0.50 Δ | prism-imbalance pair-total | P',
    ]);
  }
});

it('limits positions to half a millimetre and has no add or physical items', () => {
  expect(rule.add).toBeUndefined();
  expect(plainAsPrinted(rule)).toEqual([
    'segmentHeight | 0.5 mm each-eye | S',
    'segmentHorizontal | 0.5 mm each-eye | S',
    'fittingHeight | 0.5 mm each-eye | S',
    'fittingHorizontal | 0.5 mm each-eye | S',
  ]);
});
