/** Bars, crosses and sections of the picture: outcomes by shape, meridians by angle, thickness to scale. */
import { describe, expect, test } from 'vitest';
import { workedLens } from '../../../orders';
import { sectionOf } from '../../../orders/computed/section';
import { limitBar } from '../../../orders/picture/limit-bar';
import { ordered, read } from '../../support/job';
import { measureOf } from '../../support/judged';
import { all, drawn, firstOrder, only, pictureOf, withClass } from './support/drawn';

/** Units from the middle of a bar to its limit. */
const TO_LIMIT = 64;

function checkBar(axis: string) {
  const bar = limitBar(measureOf(read(`R -4.50 -0.75 x ${axis}`), 'axis', 'R'));
  const picture = drawn(`<svg>${bar?.content.text}</svg>`);
  const reach = only(picture, 'reach').attributes;
  return { share: (Number(reach.x2) - Number(reach.x1)) / TO_LIMIT, picture };
}

describe('a bar', () => {
  // At a cylinder of 0.75 the axis may be off by 5 degrees (ANSI Z80.1-2015, secondary account).
  test.each([
    ['022', 0, 'pass', 'circle'],
    ['024', 0.4, 'pass', 'circle'],
    ['017', -1, 'pass', 'circle'],
    ['028', 1.2, 'fail', 'rect'],
  ])('shows an axis of %s as %s of its limit, with a sign of its own', (axis, share, outcome, shape) => {
    const bar = checkBar(axis);
    expect(bar.share).toBeCloseTo(share, 2);
    expect(all(only(bar.picture, 'sign', outcome)).map(({ name }) => name)).toContain(shape);
  });

  test('shows by an arrow what lies beyond it', () => {
    const { picture } = checkBar('040');
    expect(withClass(picture, 'beyond')).toHaveLength(1);
    expect(withClass(picture, 'sign')).toHaveLength(0);
  });
});

describe('a power cross', () => {
  const angles = (text: string, eye: string, kind: string): readonly number[] => {
    const cross = withClass(pictureOf(text), 'meridian', kind)[eye === 'R' ? 0 : 1];
    return withClass(cross as never, 'spoke').map(({ attributes: { x1, y1, x2, y2 } }) => {
      const angle = (Math.atan2(Number(y2) - Number(y1), Number(x1) - Number(x2)) * 180) / Math.PI;
      return Math.round((angle + 360) % 180);
    });
  };

  test('shows both meridians counter-clockwise from the examiner’s right', () => {
    expect(angles(ordered(), 'R', 'ordered')).toEqual([22, 112]);
    expect(angles(ordered(), 'L', 'ordered')).toEqual([168, 78]);
    expect(angles(read('R -4.50 -0.75 x 027'), 'R', 'read')).toEqual([27, 117]);
  });

  test('names the power along each', () => {
    const words = withClass(pictureOf(ordered()), 'figure').map(({ text }) => text);
    expect(words).toContain('-4.50 @ 022');
    expect(words).toContain('-5.25 @ 112');
  });
});

describe('a section', () => {
  const { order } = firstOrder(ordered());
  const points = order ? sectionOf(order, 'R') : null;
  const thick = (points ?? []).map(({ front, back }) => back - front);

  test('is as thick as ordered at the optical centre', () => {
    const at = points?.find(({ right }) => Math.abs(right) < 0.6);
    expect(at && at.back - at.front).toBeCloseTo(2, 2);
  });

  test('stays between the thinnest and the thickest of the whole lens', () => {
    const values = order && workedLens(order, 'R').find(({ what }) => what === 'thickness')?.values;
    expect(Math.min(...thick)).toBeGreaterThanOrEqual(2 - 1e-9);
    expect(Math.max(...thick)).toBeLessThanOrEqual((values?.thickestEdge?.value as number) + 1e-3);
  });

  test('is thicker towards the longer side of a minus lens', () => {
    // The centre stands 3.5 mm inwards, so of the right lens the examiner’s left edge is farther from it.
    expect(thick[0]).toBeGreaterThan(thick.at(-1) ?? 0);
  });

  test('is left out where the material or the curve is not said', () => {
    expect(withClass(pictureOf(ordered('base-curve 4.00')), 'cut')).toHaveLength(2);
    const { order: bare } = firstOrder('order A\n  both -4.00\n  pd 63\n  frame A 52 B 36 DBL 18 ED 55\n');
    expect(bare && sectionOf(bare, 'R')).toBeNull();
  });
});
