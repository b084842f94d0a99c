import { describe, expect, test } from 'vitest';
import { outlineCorners, outlinePoints, outlineRadius } from '../../optics/outline';
import { powerAt } from '../../optics/power';
import { sag } from '../../optics/surfaces';
import { backSurfaceFor, backVertexPower } from '../../optics/thick-lens';
import {
  centreThicknessFor,
  edgeThickness,
  type LensToMake,
  type MadeLens,
  thicknessAt,
  wedgeThickness,
} from '../../optics/thickness';
import { volume, weight } from '../../optics/volume';
import { planoConvex } from '../published/layout';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

const middle = { right: 0, up: 0 };
const frame = { a: 52, b: 36, ed: 55 };
const round = (diameter: number) => ({ a: diameter, b: diameter, ed: diameter });

describe('printed answer', () => {
  // The plano-convex lens made by the solver: its back comes out flat, so its power is that of its front through the glass.
  checkPublished([planoConvex], ({ index, radius, diameter, edge }) => {
    const front = (1000 * (index - 1)) / radius;
    const centre = edge + sag(radius, diameter / 2);
    const sphere = backVertexPower({ front, back: 0, thickness: centre, index });
    const lens = { power: { sphere, cylinder: 0, axis: 180 }, front, index };
    return { centre: centreThicknessFor(lens, outlinePoints(round(diameter), middle), { edge, centre: 0 }) };
  });
});

describe('thickness', () => {
  const minus: MadeLens = {
    power: { sphere: backVertexPower({ front: 4, back: -14, thickness: 1, index: 1.523 }), cylinder: 0, axis: 180 },
    front: 4,
    index: 1.523,
    centre: 1,
  };

  test('of the -10.00 lens of The Indian Optician, May–June 2023, p. 112 (question printed, key not seen: our own 6.30 mm)', () => {
    expect(thicknessAt(minus, { right: 22, up: 0 })).toBeCloseTo(6.3, 2);
    expect(thicknessAt(minus, { right: 0, up: -22 })).toBeCloseTo(6.3, 2);
    expect(thicknessAt(minus, middle)).toBe(1);
    const { thinnest, thickest } = edgeThickness(minus, [middle, { right: 22, up: 0 }, { right: 10, up: 0 }]);
    expect(thinnest).toEqual({ point: middle, thickness: 1 });
    expect(thickest.point).toEqual({ right: 22, up: 0 });
    expect(edgeThickness(minus, [{ right: 22, up: 0 }, { right: 10, up: 0 }, middle]).thinnest.point).toEqual(middle);
    refused(() => edgeThickness(minus, []), 'number of points', 0, { least: 1 });
  });

  test('along each principal meridian is that of a sphere of that power', () => {
    const toric = { ...minus, power: { sphere: -3, cylinder: -2, axis: 30 } };
    for (const meridian of [30, 120]) {
      const angle = (meridian * Math.PI) / 180;
      const sphere = powerAt(toric.power, meridian);
      const alike = { ...minus, power: { sphere, cylinder: 0, axis: 180 } };
      const at = (distance: number) => ({ right: distance * Math.cos(angle), up: distance * Math.sin(angle) });
      expect(thicknessAt(toric, at(20))).toBeCloseTo(thicknessAt(alike, at(20)), 9);
      expect(thicknessAt(toric, at(-20))).toBeCloseTo(thicknessAt(alike, at(20)), 9);
    }
    // A minus cylinder is thickest across its axis.
    const across = thicknessAt(toric, { right: 20 * Math.cos(2.0944), up: 20 * Math.sin(2.0944) });
    expect(across).toBeGreaterThan(thicknessAt(toric, { right: 20, up: 0 }));
  });

  test('where the surfaces have met is refused, and told as negative among many points', () => {
    const plus = { ...minus, power: { sphere: 8, cylinder: 0, axis: 180 }, front: 10, centre: 2 };
    refused(() => thicknessAt(plus, { right: 25, up: 0 }), 'thickness at the point');
    expect(edgeThickness(plus, [{ right: 25, up: 0 }]).thinnest.thickness).toBeLessThan(0);
  });

  test('a wedge is thicker towards its base', () => {
    const prism = { ...minus, power: { sphere: 0, cylinder: 0, axis: 180 }, front: 0, prism: { right: 3, up: -2 } };
    expect(thicknessAt({ ...prism, centre: 3 }, { right: 10, up: 0 })).toBeCloseTo(3 + 30 / 52.3, 9);
    expect(thicknessAt({ ...prism, centre: 3 }, { right: 0, up: 10 })).toBeCloseTo(3 - 20 / 52.3, 9);
    expect(wedgeThickness(3, 20, 1.523)).toBeCloseTo(60 / 52.3, 9);
    expect(wedgeThickness(100, 100, 3)).toBe(50);
    expect(wedgeThickness(0, 0, 3)).toBe(0);
    // By trigonometry: a slope of that wedge turns light by the prism, for small angles.
    const slope = wedgeThickness(2, 1, 1.5);
    const deviation = Math.asin(1.5 * Math.sin(Math.atan(slope))) - Math.atan(slope);
    expect(100 * Math.tan(deviation)).toBeCloseTo(2, 2);
  });

  test('is refused out of range', () => {
    refused(() => thicknessAt({ ...minus, centre: -0.1 }, middle), 'thickness', -0.1);
    refused(() => thicknessAt({ ...minus, index: 1 }, middle), 'index', 1);
    refused(() => thicknessAt({ ...minus, front: 61 }, middle), 'front surface power', 61);
    refused(() => thicknessAt(minus, { right: 101, up: 0 }), 'point to the right', 101);
    refused(() => thicknessAt(minus, { right: 0, up: -101 }), 'point upwards', -101);
    refused(() => thicknessAt(minus, { right: 40, up: 0 }), 'half aperture', 40);
    refused(() => thicknessAt({ ...minus, prism: { right: 101, up: 0 } }, middle), 'horizontal prism', 101);
    refused(() => thicknessAt({ ...minus, prism: { right: 0, up: 101 } }, middle), 'vertical prism', 101);
    refused(() => wedgeThickness(-1, 1, 1.5), 'prism', -1);
    refused(() => wedgeThickness(101, 1, 1.5), 'prism', 101);
    refused(() => wedgeThickness(1, -1, 1.5), 'width', -1);
    refused(() => wedgeThickness(1, 101, 1.5), 'width', 101);
    refused(() => wedgeThickness(1, 1, 1), 'index', 1);
  });
});

describe('centre thickness', () => {
  const points = outlinePoints(frame, { right: 3.5, up: 2 });

  test.each<LensToMake>([
    { power: { sphere: 6, cylinder: 0, axis: 180 }, front: 8, index: 1.498 },
    { power: { sphere: 4, cylinder: 2, axis: 35 }, front: 9, index: 1.6 },
    { power: { sphere: 12, cylinder: -3, axis: 90 }, front: 15, index: 1.523 },
    { power: { sphere: 2, cylinder: -6, axis: 180 }, front: 5, index: 1.67 },
    { power: { sphere: 1, cylinder: 0, axis: 180 }, front: 6, index: 1.5, prism: { right: 0, up: 3 } },
  ])('leaves exactly the edge asked for and the power wanted: %o', (lens) => {
    const centre = centreThicknessFor(lens, points, { edge: 1.2, centre: 0.5 });
    expect(edgeThickness({ ...lens, centre }, points).thinnest.thickness).toBeCloseTo(1.2, 10);
    for (const meridian of [lens.power.sphere, lens.power.sphere + lens.power.cylinder]) {
      const back = backSurfaceFor(meridian, lens.front, centre, lens.index);
      expect(Math.abs(backVertexPower({ ...lens, back, thickness: centre }) - meridian)).toBeLessThan(1e-9);
    }
  });

  test('of a minus lens is the least wanted at the centre', () => {
    const lens = { power: { sphere: -6, cylinder: -1, axis: 20 }, front: 3, index: 1.6 };
    expect(centreThicknessFor(lens, points, { edge: 1, centre: 1.5 })).toBe(1.5);
    // At its optical centre it would be thinner than the edge asked for.
    expect(centreThicknessFor(lens, [middle], { edge: 2, centre: 1.5 })).toBeCloseTo(2, 10);
  });

  test('is refused out of range', () => {
    const lens = { power: { sphere: 6, cylinder: 0, axis: 180 }, front: 8, index: 1.498 };
    refused(() => centreThicknessFor(lens, points, { edge: -0.1, centre: 1 }), 'edge thickness', -0.1);
    refused(() => centreThicknessFor(lens, points, { edge: 30.1, centre: 1 }), 'edge thickness', 30.1);
    refused(() => centreThicknessFor(lens, points, { edge: 1, centre: -0.1 }), 'centre thickness', -0.1);
    refused(() => centreThicknessFor(lens, points, { edge: 1, centre: 30.1 }), 'centre thickness', 30.1);
    refused(() => centreThicknessFor(lens, [], { edge: 1, centre: 1 }), 'number of points', 0);
    refused(() => centreThicknessFor({ ...lens, front: 40 }, points, { edge: 1, centre: 1 }), 'half aperture');
  });
});

describe('outline', () => {
  test('is the box cut by the circle', () => {
    expect(outlineRadius(frame, 0)).toBe(26);
    expect(outlineRadius(frame, 90)).toBeCloseTo(18, 12);
    expect(outlineRadius(frame, 180)).toBe(26);
    expect(outlineRadius(frame, 30)).toBe(27.5);
    expect(outlineRadius(frame, -30)).toBe(27.5);
    expect(outlineRadius(frame, 60)).toBeCloseTo(18 / Math.sin(Math.PI / 3), 12);
  });

  test('has its corners where side, circle and top meet', () => {
    const corners = outlineCorners(frame);
    expect(corners).toHaveLength(13);
    expect(corners).toEqual([...corners].sort((a, b) => a - b));
    expect(corners[1]).toBeCloseTo((Math.acos(52 / 55) * 180) / Math.PI, 9);
    expect(corners[2]).toBeCloseTo((Math.asin(36 / 55) * 180) / Math.PI, 9);
    expect(outlineRadius(frame, corners[1] ?? 0)).toBeCloseTo(27.5, 9);
    expect(outlineRadius(frame, corners[2] ?? 0)).toBeCloseTo(27.5, 9);
    expect(outlineCorners({ a: 40, b: 30, ed: 50 })[1]).toBeCloseTo(36.87, 2);
    expect(outlineCorners({ a: 40, b: 30, ed: 50 })[2]).toBeCloseTo(36.87, 2);
  });

  test('is given in points from the optical centre, corners included', () => {
    const points = outlinePoints(frame, { right: 3, up: -2 }, 90);
    expect(points).toHaveLength(4 + 13);
    expect(points[0]?.right).toBeCloseTo(23, 12);
    expect(points[0]?.up).toBeCloseTo(2, 12);
    expect(points[1]?.right).toBeCloseTo(-3, 12);
    expect(points[1]?.up).toBeCloseTo(20, 12);
    expect(outlinePoints(frame, middle)).toHaveLength(180 + 13);
    expect(outlinePoints(frame, middle, 7)).toHaveLength(52 + 13);
    for (const { right, up } of outlinePoints(round(50), middle, 10)) expect(Math.hypot(right, up)).toBeCloseTo(25, 9);
  });

  test('that cannot be is refused', () => {
    refused(() => outlineRadius({ a: 4.9, b: 30, ed: 50 }, 0), 'a', 4.9);
    refused(() => outlineRadius({ a: 120.1, b: 30, ed: 50 }, 0), 'a', 120.1);
    refused(() => outlineRadius({ a: 50, b: 4.9, ed: 50 }, 0), 'b', 4.9);
    refused(() => outlineRadius({ a: 50, b: 120.1, ed: 50 }, 0), 'b', 120.1);
    refused(() => outlineRadius({ a: 50, b: 30, ed: 49.9 }, 0), 'effective diameter', 49.9);
    refused(() => outlineRadius({ a: 30, b: 50, ed: 49.9 }, 0), 'effective diameter', 49.9);
    refused(() => outlineRadius({ a: 30, b: 40, ed: 50.1 }, 0), 'effective diameter', 50.1);
    refused(() => outlineRadius(frame, 721), 'direction', 721);
    refused(() => outlineRadius(frame, -721), 'direction', -721);
    expect(outlineRadius({ a: 120, b: 5, ed: 120 }, 0)).toBe(60);
    expect(outlineRadius({ a: 5, b: 120, ed: 120 }, 720)).toBe(2.5);
    refused(() => outlineCorners({ a: 50, b: 30, ed: 49 }), 'effective diameter', 49);
    refused(() => outlinePoints(frame, { right: 101, up: 0 }), 'optical centre to the right', 101);
    refused(() => outlinePoints(frame, { right: 0, up: 101 }), 'optical centre upwards', 101);
    refused(() => outlinePoints(frame, middle, 0.09), 'step', 0.09);
    refused(() => outlinePoints(frame, middle, 90.1), 'step', 90.1);
    expect(outlinePoints(frame, middle, 0.1)).toHaveLength(3600 + 13);
  });
});

describe('volume', () => {
  const plate: MadeLens = { power: { sphere: 0, cylinder: 0, axis: 180 }, front: 0, index: 1.5, centre: 2 };

  test('of a plate is its area times its thickness', () => {
    expect(volume(plate, { a: 40, b: 30, ed: 50 }, middle)).toBeCloseTo(2400, 5);
    expect(volume(plate, round(60), middle)).toBeCloseTo(2 * Math.PI * 900, 6);
    // Rectangle cut by a circle: the four corner pieces, by the area between the chords and the arc.
    const [x, y, r] = [26, 18, 27.5];
    const arc = Math.asin(y / r) - Math.acos(x / r);
    const area = 4 * ((r ** 2 * arc) / 2 + (x * Math.sqrt(r ** 2 - x ** 2)) / 2 + (y * Math.sqrt(r ** 2 - y ** 2)) / 2);
    expect(volume(plate, frame, middle)).toBeCloseTo(2 * area, 6);
  });

  test('of a plate with a prism off its middle is that of the thickness there', () => {
    const prism = { ...plate, prism: { right: 1, up: 2 } };
    const there = 2 - (5 * 1 + 3 * 2) / 50;
    expect(volume(prism, { a: 40, b: 30, ed: 50 }, { right: 5, up: 3 })).toBeCloseTo(1200 * there, 5);
  });

  test('of a round lens is that of a cylinder and two spherical caps', () => {
    const lens: MadeLens = { power: { sphere: -6, cylinder: 0, axis: 180 }, front: 4, index: 1.5, centre: 1.5 };
    const back = -500 / backSurfaceFor(-6, 4, 1.5, 1.5);
    const cap = (radius: number) => {
      const depth = radius - Math.sqrt(radius ** 2 - 30 ** 2);
      return (Math.PI * depth ** 2 * (3 * radius - depth)) / 3;
    };
    // The cap below the edge plane is what the surface hollows out: sag times area less the cap is the rest.
    const below = (radius: number) => sag(radius, 30) * Math.PI * 900 - cap(radius);
    expect(volume(lens, round(60), middle)).toBeCloseTo(1.5 * Math.PI * 900 + below(back) - below(125), 3);
  });

  test('of a decentred toric lens is what a fine grid counts', () => {
    const lens: MadeLens = { power: { sphere: -4, cylinder: -3, axis: 25 }, front: 5, index: 1.6, centre: 1.8 };
    const step = 0.2;
    let counted = 0;
    for (let x = -26 + step / 2; x < 26; x += step) {
      for (let y = -18 + step / 2; y < 18; y += step) {
        if (Math.hypot(x, y) < 27.5) counted += thicknessAt(lens, { right: x - 4, up: y + 1 }) * step ** 2;
      }
    }
    expect(volume(lens, frame, { right: 4, up: -1 }) / counted).toBeCloseTo(1, 3);
  });

  test('is refused where there is no glass', () => {
    const plus = { ...plate, power: { sphere: 8, cylinder: 0, axis: 180 }, front: 10 };
    refused(() => volume(plus, frame, middle), 'thickness');
    refused(() => volume(plate, frame, { right: 101, up: 0 }), 'optical centre to the right', 101);
    refused(() => volume(plate, frame, { right: 0, up: 101 }), 'optical centre upwards', 101);
    refused(() => volume(plate, { ...frame, ed: 20 }, middle), 'effective diameter', 20);
  });

  test('weighs by density', () => {
    expect(weight(4000, 1.32)).toBeCloseTo(5.28, 12);
    expect(weight(1e6, 10)).toBe(10000);
    expect(weight(0, 0.5)).toBe(0);
    refused(() => weight(-1, 1), 'volume', -1);
    refused(() => weight(1e6 + 1, 1), 'volume', 1e6 + 1);
    refused(() => weight(1, 0.4), 'density', 0.4);
    refused(() => weight(1, 10.1), 'density', 10.1);
  });
});
