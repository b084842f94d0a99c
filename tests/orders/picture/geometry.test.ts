/**
 * Where things stand on the picture of a job, against figures worked out by hand. Boxed measures as in ISO 8624, from
 * memory: A and B are the sides of the box, DBL lies between the boxes, the boxed centre is the middle of the box; the
 * horizontal move of a centre is (A + DBL − PD) / 2 (OpticalCourse free dispensing course, quiz answers).
 */
import { describe, expect, test } from 'vitest';
import { JOB, ordered, put, read, written } from '../../support/job';
import { boxOf, type Drawn, only, pictureOf, placeOf, withClass } from './support/drawn';

/** Of a mark from the middle of its box, millimetres: to the examiner’s right, and upwards. */
function fromMiddle(picture: Drawn, eye: 'R' | 'L', ...classes: readonly string[]): readonly [number, number] {
  const [box, place] = [boxOf(picture, eye), placeOf(only(picture, ...classes, eye))];
  return [round(place.x - box.middle), round(box.level - place.y)];
}

const round = (value: number): number => Math.round(value * 100) / 100 + 0;

describe('a pair of boxes', () => {
  const picture = pictureOf(ordered());
  const [R, L] = [boxOf(picture, 'R'), boxOf(picture, 'L')];

  test('is to scale, with the right eye on the left', () => {
    expect([R.width, R.height, L.width, L.height]).toEqual([52, 36, 52, 36]);
    expect(round(L.middle - R.middle)).toBe(52 + 18);
  });

  test('is mirrored about the bridge where both lenses are alike', () => {
    const bridge = (R.middle + L.middle) / 2;
    for (const what of [
      ['mark', 'ordered'],
      ['segment', 'ordered'],
    ]) {
      const [right, left] = (['R', 'L'] as const).map((eye) => placeOf(only(picture, ...what, eye)));
      expect(round(bridge - (right?.x ?? 0))).toBe(round((left?.x ?? 0) - bridge));
      expect(right?.y).toBe(left?.y);
    }
  });
});

describe.each<[what: string, lines: readonly string[], R: readonly [number, number], L: readonly [number, number]]>([
  // (52 + 18 − 63) / 2 = 3.5 inwards; the right eye’s nose side is to the examiner’s right.
  ['the distance PD of both eyes', ['pd 63 near 60'], [3.5, 0], [-3.5, 0]],
  // (52 + 18) / 2 − 33 = 2, (52 + 18) / 2 − 30 = 5.
  ['a PD for each eye', ['pd R 33 L 30'], [2, 0], [-5, 0]],
  // (54 + 18) / 2 − 36.5 = −0.5: outwards.
  ['a PD wider than the frame', ['frame A 54 B 36 DBL 18 ED 57', 'pd 73'], [-0.5, 0], [0.5, 0]],
  // A fitting point 22 mm above the lower tangent of a box 36 high stands 22 − 18 = 4 above its middle.
  ['the height of a fitting point', ['design progressive', 'pd 63', 'height R 22 L 21'], [3.5, 4], [-3.5, 3]],
  // A pair made for near is placed by the near PD: (52 + 18 − 60) / 2 = 5.
  ['the near PD of a pair for near', ['design single-vision near'], [5, -1], [-5, -1]],
])('the ordered point by %s', (_, lines, R, L) => {
  test('stands where it should', () => {
    const picture = pictureOf(ordered(...lines));
    expect(fromMiddle(picture, 'R', 'mark', 'ordered')).toEqual(R);
    expect(fromMiddle(picture, 'L', 'mark', 'ordered')).toEqual(L);
  });
});

test('the segment stands by near PD and height', () => {
  const picture = pictureOf(ordered('height R 17 L 15'));
  // (52 + 18 − 60) / 2 = 5 inwards; 17 and 15 above the lower tangent are 1 and 3 below the middle of 36.
  expect(fromMiddle(picture, 'R', 'segment', 'ordered')).toEqual([5, -1]);
  expect(fromMiddle(picture, 'L', 'segment', 'ordered')).toEqual([-5, -3]);
});

test('a flat-top segment is as wide and deep as its size says', () => {
  const { d = '' } = only(pictureOf(ordered('design bifocal flat-top 28')), 'segment', 'ordered', 'R').attributes;
  // 28 wide about a middle 5 below its top: the top is 2 √(14² − 5²) = 26.15 wide (28 x 19, Bhootra, p. 124).
  const [, from, to, radius] = /^M(\S+) 0H(\S+)A(\S+) /.exec(d) ?? [];
  expect((Number(to) - Number(from)) / 5).toBeCloseTo(26.15, 2);
  expect(Number(radius) / 5).toBe(14);
});

test('the smallest blank is drawn about the point it is cut from', () => {
  const picture = pictureOf(ordered());
  const { cx, cy, r } = only(picture, 'blank', 'R').attributes;
  const box = boxOf(picture, 'R');
  // ED + 2 × decentration = 55 + 2 × 3.5 = 62 (OpticalCourse free dispensing course, quiz answers).
  expect(Number(r) / 5).toBe(31);
  expect([round(Number(cx) / 5 - box.middle), round(Number(cy) / 5 - box.level)]).toEqual([3.5, 0]);
});

test('what was read stands by its own figures', () => {
  const picture = pictureOf(read('pd R 33 L 31.5', 'height R 17.5 L 17'));
  // 33 from the middle of the bridge is (52 + 18) / 2 − 33 = 2 inwards.
  expect(fromMiddle(picture, 'R', 'mark', 'read')).toEqual([2, 0]);
  expect(fromMiddle(picture, 'L', 'mark', 'read')).toEqual([-3.5, 0]);
  expect(fromMiddle(picture, 'R', 'segment', 'read')).toEqual([5, -0.5]);
});

test('half the error of a sum is shown at each eye', () => {
  const order = put(put(JOB.order, 'pd R 32 L 31'), 'design single-vision');
  const picture = pictureOf(written({ ...JOB, order, reading: put(JOB.reading, 'pd 64') }));
  // 64 less 63 is 1: half a millimetre further out each, 3 − 0.5 and 4 − 0.5 inwards.
  expect(fromMiddle(picture, 'R', 'mark', 'read')[0]).toBe(2.5);
  expect(fromMiddle(picture, 'L', 'mark', 'read')[0]).toBe(-3.5);
});

test('the outline of a lens lies in its box and reaches its effective diameter', () => {
  const picture = pictureOf(ordered());
  const box = boxOf(picture, 'R');
  const { d = '' } = withClass(only(picture, 'lens', 'R'), 'glass')[0]?.attributes ?? {};
  const points = [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x) / 5, Number(y) / 5] as const);
  const far = points.map(([x, y]) => Math.hypot(x - box.middle, y - box.level));
  expect(points.length).toBeGreaterThan(100);
  expect(Math.max(...far)).toBeCloseTo(55 / 2, 1);
  expect(Math.max(...points.map(([x]) => Math.abs(x - box.middle)))).toBeCloseTo(26, 1);
});
