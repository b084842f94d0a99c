import { describe, expect, test } from 'vitest';
import { baseCurveByBoddy, baseCurveByVogel, curveVariationFactor } from '../../optics/base-curve';
import {
  decentration,
  insetByConvergence,
  insetByThreeQuarterRule,
  minimumBlank,
  monocularDecentration,
  opticalCentreDropForTilt,
  opticalCentreHeightForTilt,
  segmentDrop,
  segmentInset,
  totalInset,
} from '../../optics/layout';
import { sag } from '../../optics/surfaces';
import { centreForTilt } from '../published/as-worn';
import { blanks, curveVariation, decentrations, drops, nearInset, planoConvex } from '../published/layout';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([planoConvex], ({ radius, diameter, edge }) => ({ centre: edge + sag(radius, diameter / 2) }));
  checkPublished([curveVariation], ({ index, reference }) => ({ factor: curveVariationFactor(index, reference) }));
  checkPublished(decentrations, ({ a, dbl, pd }) => ({ in: decentration(a, dbl, pd) }));
  checkPublished(blanks, ({ a, dbl, pd, ed }) => ({ blank: minimumBlank(ed, decentration(a, dbl, pd)) }));
  checkPublished(drops, ({ b, height }) => ({ below: segmentDrop(height, b) }));
  for (const inset of [insetByThreeQuarterRule, (away: number) => insetByConvergence(32, away)]) {
    checkPublished([nearInset], ({ workingDistance }) => ({
      insetPerLens: inset(workingDistance),
      nearPdLess: 2 * inset(workingDistance),
    }));
  }
  checkPublished([centreForTilt], ({ tilt }) => ({ lowerBy: 20 - opticalCentreHeightForTilt(20, tilt) }));
  checkPublished([centreForTilt], ({ tilt }) => ({ lowerBy: opticalCentreDropForTilt(tilt) }));
});

describe('decentration', () => {
  test('each eye has its own half distance, and outwards is negative', () => {
    expect(monocularDecentration(52, 18, 31.5)).toBe(3.5);
    expect(monocularDecentration(48, 14, 33)).toBe(-2);
    expect(monocularDecentration(48, 14, 31)).toBe(0);
    expect(decentration(52, 18, 63)).toBe(3.5);
    expect(totalInset(52, 18, 60)).toBe(5);
  });

  test('the blank covers outward decentration alike, with a margin when asked', () => {
    expect(minimumBlank(55, 3.5)).toBe(62);
    expect(minimumBlank(55, -3.5)).toBe(62);
    expect(minimumBlank(55, 3.5, 2)).toBe(64);
  });

  test('is refused out of range', () => {
    refused(() => decentration(200.1, 18, 63), 'a', 200.1);
    refused(() => decentration(-0.1, 18, 63), 'a', -0.1);
    refused(() => decentration(52, 200.1, 63), 'dbl', 200.1);
    refused(() => decentration(52, 18, 14.9), 'pupil distance', 14.9);
    refused(() => decentration(52, 18, 100.1), 'pupil distance', 100.1);
    refused(() => monocularDecentration(52, 18, 7.4), 'monocular pupil distance', 7.4);
    refused(() => monocularDecentration(52, 18, 50.1), 'monocular pupil distance', 50.1);
    expect(monocularDecentration(0, 200, 50)).toBe(50);
    expect(monocularDecentration(200, 0, 7.5)).toBe(92.5);
    expect(decentration(0, 0, 15)).toBe(-7.5);
    expect(decentration(0, 0, 100)).toBe(-50);
    refused(() => minimumBlank(-1, 0), 'effective diameter', -1);
    refused(() => minimumBlank(50, 201), 'decentration', 201);
    refused(() => minimumBlank(50, -201), 'decentration', -201);
    refused(() => minimumBlank(50, 0, -1), 'margin', -1);
    expect(minimumBlank(200, 200, 200)).toBe(800);
    expect(minimumBlank(0, -200, 0)).toBe(400);
  });
});

describe('segments', () => {
  test('insets share the difference of the distances', () => {
    expect(segmentInset(63, 60)).toBe(1.5);
    expect(segmentInset(63, 63)).toBe(0);
    refused(() => segmentInset(101, 60), 'pupil distance', 101);
    refused(() => segmentInset(63, 14), 'near pupil distance', 14);
    expect(segmentInset(100, 15)).toBe(42.5);
  });

  test('the top lies below the centre line when it is lower than half the box', () => {
    expect(segmentDrop(17, 36)).toBe(1);
    expect(segmentDrop(0, 200)).toBe(100);
    expect(segmentDrop(18, 36)).toBe(0);
    refused(() => segmentDrop(-1, 36), 'height', -1);
    refused(() => segmentDrop(201, 36), 'height', 201);
    refused(() => segmentDrop(17, 201), 'b', 201);
    refused(() => segmentDrop(17, -1), 'b', -1);
  });
});

describe('near insets', () => {
  // Our own figures, from the two rules.
  test.each([
    [400, 1.875],
    [330, 2.27],
    [250, 3],
    [200, 3.75],
  ])('three quarters for %d mm', (away, inset) => expect(insetByThreeQuarterRule(away)).toBeCloseTo(inset, 2));

  test.each([
    [-10, 1.61],
    [0, 2.02],
    [10, 2.71],
  ])('convergence through %d D', (power, inset) => expect(insetByConvergence(32, 400, power)).toBeCloseTo(inset, 2));

  test('a longer way to the centre of rotation calls for more', () => {
    expect(insetByConvergence(32, 400, 0, 40)).toBeCloseTo(32 / 11, 9);
    expect(63 - 2 * insetByConvergence(31.5, 400)).toBeCloseTo(59.02, 2);
  });

  test('are refused out of range', () => {
    refused(() => insetByThreeQuarterRule(99.9), 'working distance', 99.9);
    refused(() => insetByThreeQuarterRule(2000.1), 'working distance', 2000.1);
    expect(insetByThreeQuarterRule(100)).toBe(7.5);
    expect(insetByThreeQuarterRule(2000)).toBe(0.375);
    refused(() => insetByConvergence(7.4, 400), 'monocular pupil distance', 7.4);
    refused(() => insetByConvergence(50.1, 400), 'monocular pupil distance', 50.1);
    refused(() => insetByConvergence(32, 99), 'working distance', 99);
    refused(() => insetByConvergence(32, 2001), 'working distance', 2001);
    refused(() => insetByConvergence(32, 400, 30.1), 'horizontal power', 30.1);
    refused(() => insetByConvergence(32, 400, -30.1), 'horizontal power', -30.1);
    refused(() => insetByConvergence(32, 400, 0, 14.9), 'distance to the centre of rotation', 14.9);
    refused(() => insetByConvergence(32, 400, 0, 40.1), 'distance to the centre of rotation', 40.1);
    expect(insetByConvergence(50, 2000, 30, 15)).toBeCloseTo(50 / (1 + 2000 * (1 / 15 - 0.03)), 9);
    expect(insetByConvergence(7.5, 100, -30, 40)).toBeCloseTo(7.5 / (1 + 100 * (1 / 40 + 0.03)), 9);
  });
});

describe('tilt', () => {
  test('lowers the optical centre, never raises it', () => {
    expect(opticalCentreHeightForTilt(26, 12)).toBe(20);
    expect(opticalCentreDropForTilt(12)).toBeCloseTo(5.739, 3);
    expect(opticalCentreDropForTilt(45, 20)).toBeCloseTo(20, 9);
    expect(opticalCentreDropForTilt(-45, 20)).toBeCloseTo(-20, 9);
    expect(opticalCentreHeightForTilt(200, 45)).toBe(177.5);
    expect(opticalCentreHeightForTilt(0, -45)).toBe(22.5);
  });

  test('is refused out of range', () => {
    refused(() => opticalCentreHeightForTilt(201, 0), 'height', 201);
    refused(() => opticalCentreHeightForTilt(-1, 0), 'height', -1);
    refused(() => opticalCentreHeightForTilt(20, 45.1), 'tilt', 45.1);
    refused(() => opticalCentreHeightForTilt(20, -45.1), 'tilt', -45.1);
    refused(() => opticalCentreDropForTilt(45.1), 'tilt', 45.1);
    refused(() => opticalCentreDropForTilt(10, 14), 'distance to the centre of rotation', 14);
    refused(() => opticalCentreDropForTilt(10, 41), 'distance to the centre of rotation', 41);
    expect(opticalCentreDropForTilt(45, 40)).toBeCloseTo(40, 9);
    expect(opticalCentreDropForTilt(45, 15)).toBeCloseTo(15, 9);
  });
});

describe('base curves', () => {
  test('by Vogel: the worked figures +1.50 and -2.25', () => {
    expect(baseCurveByVogel(1.5)).toBe(7.5);
    expect(baseCurveByVogel(-2.25)).toBe(4.875);
    expect(baseCurveByVogel(0)).toBe(6);
    expect(baseCurveByVogel(40)).toBe(46);
    expect(baseCurveByVogel(-40)).toBe(-14);
    refused(() => baseCurveByVogel(40.1), 'spherical equivalent', 40.1);
    refused(() => baseCurveByVogel(-40.1), 'spherical equivalent', -40.1);
  });

  test('by Boddy, with half of the add', () => {
    expect(baseCurveByBoddy(2, 2)).toBe(6.5);
    expect(baseCurveByBoddy(2)).toBe(5.5);
    expect(baseCurveByBoddy(-3, 2)).toBe(3.75);
    expect(baseCurveByBoddy(0)).toBe(4.25);
    expect(baseCurveByBoddy(40, 10)).toBe(48.5);
    refused(() => baseCurveByBoddy(-40.1), 'spherical equivalent', -40.1);
    refused(() => baseCurveByBoddy(1, -0.1), 'add', -0.1);
    refused(() => baseCurveByBoddy(1, 10.1), 'add', 10.1);
  });

  test('a higher index is flatter', () => {
    expect(curveVariationFactor(1.523)).toBe(1);
    expect(curveVariationFactor(1.6)).toBeCloseTo(0.8717, 4);
    expect(curveVariationFactor(3, 3)).toBe(1);
    refused(() => curveVariationFactor(1), 'index', 1);
    refused(() => curveVariationFactor(3.1), 'index', 3.1);
    refused(() => curveVariationFactor(1.6, 1), 'reference index', 1);
    refused(() => curveVariationFactor(1.6, 3.1), 'reference index', 3.1);
  });
});
