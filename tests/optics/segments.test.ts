import { describe, expect, test } from 'vitest';
import { prentice } from '../../optics/prism';
import { slabOff, verticalImbalanceAtReading } from '../../optics/prism-pair';
import { imageJump, prismAtReading, segmentPrism, unequalRoundSegments } from '../../optics/segment-prism';
import { jumpAnswers, segmentAnswers, slabAnswer, unequalAdds, unequalSegments } from '../published/segments';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([slabAnswer], ({ right, left, drop }) => {
    const imbalance = verticalImbalanceAtReading(right, left, drop);
    return { imbalance: Math.abs(imbalance), slabOnRight: Number(slabOff(imbalance)?.slab === 'R') };
  });
  checkPublished([unequalAdds], ({ right, left, rightAdd, leftAdd }) => {
    const [top, reading, radius] = [3, 8, 11];
    const centre = top + radius;
    return {
      distanceImbalance: verticalImbalanceAtReading(right, left, reading),
      aboveSegmentCentre: centre - reading,
      rightDistance: prentice(right, { right: 0, up: reading }).up,
      rightSegment: segmentPrism(rightAdd, centre - reading),
      rightTotal: prismAtReading(right, rightAdd, reading, centre),
      leftDistance: prentice(left, { right: 0, up: reading }).up,
      leftSegment: segmentPrism(leftAdd, centre - reading),
      moreBaseUpRight:
        prismAtReading(right, rightAdd, reading, centre) - prismAtReading(left, leftAdd, reading, centre),
    };
  });
  checkPublished(segmentAnswers, (points) => ({ ...points.map(({ add, above }) => segmentPrism(add, above)) }));
  checkPublished([unequalSegments], ({ right, left, add, diameter }) => {
    const { R, L } = unequalRoundSegments(right, left, add, diameter);
    return { right: R, left: L };
  });
  checkPublished(jumpAnswers, ({ add, topToCentre }) => ({ jump: imageJump(add, topToCentre) }));
});

describe('imbalance at reading', () => {
  test('counts the power at 90 and not the sphere', () => {
    const right = { sphere: 1, cylinder: -2, axis: 180 };
    const left = { sphere: 1, cylinder: -2, axis: 90 };
    expect(verticalImbalanceAtReading(right, left, 10)).toBeCloseTo(-2, 12);
    expect(verticalImbalanceAtReading(right, left, -10)).toBeCloseTo(2, 12);
    expect(verticalImbalanceAtReading(left, left, 10)).toBe(0);
    expect(verticalImbalanceAtReading(left, right, 0)).toBe(0);
    expect(verticalImbalanceAtReading(left, left, -10)).toBe(0);
  });

  test('values outside their range are refused', () => {
    const lens = { sphere: 1, cylinder: 0, axis: 180 };
    refused(() => verticalImbalanceAtReading(lens, lens, 100.1), 'drop', 100.1);
    refused(() => verticalImbalanceAtReading({ ...lens, sphere: 41 }, lens, 10), 'sphere', 41);
    refused(() => verticalImbalanceAtReading(lens, { ...lens, sphere: -41 }, 10), 'sphere', -41);
  });
});

describe('slab-off', () => {
  test('goes base up where there is less base up, or base down on the other lens', () => {
    expect(slabOff(3)).toEqual({ slab: 'L', reverse: 'R', amount: 3 });
    expect(slabOff(-1.5)).toEqual({ slab: 'R', reverse: 'L', amount: 1.5 });
    expect(slabOff(0)).toBeUndefined();
    refused(() => slabOff(100.1), 'vertical imbalance', 100.1);
  });

  test('goes on the more minus lens', () => {
    const [right, left] = [
      { sphere: -5, cylinder: 0, axis: 180 },
      { sphere: -2, cylinder: 0, axis: 180 },
    ];
    expect(slabOff(verticalImbalanceAtReading(right, left, 10))).toEqual({ slab: 'R', reverse: 'L', amount: 3 });
  });
});

describe('segments', () => {
  test('unequal round segments level what they were chosen for', () => {
    const [right, left, add] = [2.2, 1.0, 2.5];
    const { R, L } = unequalRoundSegments(right, left, add, 24);
    // Each optical centre lies a radius below the segment's top, so a larger segment moves it down.
    const level = right + segmentPrism(add, (R - 24) / 2) - (left + segmentPrism(add, (L - 24) / 2));
    expect(level).toBeCloseTo(0, 9);
    expect(R).toBeGreaterThan(L);
  });

  test('segments that vanish or grow beyond 100 mm are refused', () => {
    refused(() => unequalRoundSegments(0, 0, 0, 22), 'add', 0);
    refused(() => unequalRoundSegments(0, 0, 41, 22), 'add', 41);
    refused(() => unequalRoundSegments(0, 0, 1, 0), 'diameter', 0);
    refused(() => unequalRoundSegments(-3, 0, 1, 22), 'diameter', -8);
    refused(() => unequalRoundSegments(3, 0, 1, 22), 'diameter', -8);
    refused(() => unequalRoundSegments(9, 0, 1, 20), 'diameter', 110);
    refused(() => unequalRoundSegments(101, 0, 1, 20), 'prism', 101);
    refused(() => unequalRoundSegments(0, 101, 1, 20), 'prism', 101);
  });

  test('nothing is negative zero, and values outside their range are refused', () => {
    expect(segmentPrism(2, 0)).toBe(0);
    expect(imageJump(0, 5)).toBe(0);
    refused(() => segmentPrism(41, 1), 'add', 41);
    refused(() => segmentPrism(1, 101), 'distance', 101);
    const lens = { sphere: 1, cylinder: 0, axis: 180 };
    refused(() => prismAtReading(lens, 1, 101, 0), 'reading drop', 101);
    refused(() => prismAtReading(lens, 1, 0, -101), 'drop of the segment centre', -101);
  });
});
