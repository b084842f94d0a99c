import { describe, expect, test } from 'vitest';
import {
  approximateSag,
  curvature,
  radiusFromSag,
  radiusOfSurface,
  sag,
  sagOfCurvature,
  sagOfSurface,
  surfacePowerOfRadius,
} from '../../optics/surfaces';
import { backSurfaceFor, nominalPower } from '../../optics/thick-lens';
import { toricForm, toricSag } from '../../optics/toric-surface';
import {
  edgeOfLens,
  exactSag,
  lensmaker,
  mixedSurfaces,
  nominalPowers,
  radii,
  roughSag,
  surfacePowers,
} from '../published/surfaces';
import { toricTransposition } from '../published/transposition';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([exactSag], ({ radius, halfAperture }) => ({ sag: sag(radius, halfAperture) }));
  checkPublished([roughSag], ({ power, index, halfAperture }) => ({
    radius: radiusOfSurface(power, index),
    sag: approximateSag(power, index, halfAperture),
  }));
  checkPublished([edgeOfLens], ({ front, back, halfAperture, centre }) => ({
    edge: centre - sagOfCurvature(front, halfAperture) + sagOfCurvature(back, halfAperture),
  }));
  checkPublished(surfacePowers, (surfaces) => ({
    ...surfaces.map(({ index, radius }) => surfacePowerOfRadius(radius, index)),
  }));
  checkPublished([radii], (surfaces) => ({ ...surfaces.map(({ index, power }) => radiusOfSurface(power, index)) }));
  checkPublished([mixedSurfaces], ({ toPower, toRadius }) => ({
    ...numbered(
      'power',
      toPower.map(({ index, radius }) => surfacePowerOfRadius(radius, index)),
    ),
    ...numbered(
      'radius',
      toRadius.map(({ index, power }) => radiusOfSurface(power, index)),
    ),
  }));
  checkPublished([lensmaker], (lenses) => ({
    ...lenses.map(({ index, radii }) =>
      radii.reduce((power, [sign, metres]) => power + sign * surfacePowerOfRadius(metres * 1000, index), 0),
    ),
  }));
  checkPublished([nominalPowers], ({ wanted, made }) => ({
    ...numbered(
      'back',
      wanted.map(({ power, front }) => backSurfaceFor(power, front, 0, 1.5)),
    ),
    ...numbered(
      'power',
      made.map(({ front, back }) => nominalPower({ front, back, thickness: 0, index: 1.5 })),
    ),
  }));
  checkPublished(toricTransposition, ({ power, base }) => {
    const form = toricForm(power, base);
    return {
      sphericalSide: form.sphericalSide,
      base: form.base.power,
      baseAxis: form.base.axis,
      cross: form.cross.power,
      crossAxis: form.cross.axis,
    };
  });
});

describe('sags', () => {
  test('are exact: the 3-4-5 triangle, and the hemisphere', () => {
    expect(sag(50, 30)).toBe(10);
    expect(sag(-50, 30)).toBe(-10);
    expect(sag(50, 50)).toBe(50);
    expect(sag(65, 20)).toBeCloseTo(3.153, 3);
    expect(sag(50, 0)).toBe(0);
  });

  test('keep their digits on flat curves', () => {
    expect(sag(1e6, 1)).toBeCloseTo(5e-7, 18);
    expect(sagOfSurface(0, 1.5, 30)).toBe(0);
    expect(sagOfCurvature(-0, 30)).toBe(0);
  });

  test('the approximate one falls short on a steep curve', () => {
    expect(approximateSag(6, 1.53, 25)).toBeCloseTo(3.538, 3);
    expect(sagOfSurface(6, 1.53, 25)).toBeCloseTo(3.612, 3);
    expect(approximateSag(-6, 1.53, 25)).toBeCloseTo(-3.538, 3);
    expect(approximateSag(-6, 1.53, 0)).toBe(0);
  });

  test('come back as radii', () => {
    expect(radiusFromSag(10, 30)).toBe(50);
    expect(radiusFromSag(-10, 30)).toBe(-50);
    expect(radiusFromSag(30, 30)).toBe(30);
  });

  test('curvature is the inverse of the radius', () => {
    expect(curvature(6, 1.53) * radiusOfSurface(6, 1.53)).toBeCloseTo(1, 12);
  });

  test('are refused where the curve does not reach', () => {
    refused(() => sag(-50, 50.01), 'half aperture', 50.01, { least: 0, most: 50 });
    refused(() => sagOfSurface(30, 1.5, 17), 'half aperture', 17);
    refused(() => sag(50, -0.1), 'half aperture', -0.1);
    refused(() => sag(1000, 200.1), 'half aperture', 200.1);
    refused(() => approximateSag(1, 1.5, 200.1), 'half aperture', 200.1);
    refused(() => sag(0, 1), 'radius', 0);
    refused(() => sag(1e6 + 1, 1), 'radius', 1e6 + 1);
    refused(() => radiusFromSag(0, 10), 'radius', Infinity);
    refused(() => sagOfCurvature(1.01, 0), 'curvature', 1.01);
    refused(() => sagOfCurvature(-1.01, 0), 'curvature', -1.01);
    expect(sagOfCurvature(-1, 1)).toBe(-1);
    expect(sagOfCurvature(1, 1)).toBe(1);
    refused(() => radiusFromSag(10.1, 10), 'sag', 10.1);
    refused(() => radiusFromSag(-10.1, 10), 'sag', -10.1);
    refused(() => radiusFromSag(1, 0), 'half aperture', 0);
    refused(() => radiusFromSag(1, 200.1), 'half aperture', 200.1);
  });

  test('surface powers are refused beyond 60 D, and radii of flat surfaces', () => {
    expect(radiusOfSurface(60, 1.6)).toBeCloseTo(10, 9);
    expect(surfacePowerOfRadius(1e6, 3)).toBeCloseTo(0.002, 9);
    refused(() => radiusOfSurface(0, 1.5), 'radius', Infinity);
    refused(() => radiusOfSurface(60, 1.05), 'radius');
    refused(() => surfacePowerOfRadius(0.9, 1.5), 'radius', 0.9);
    refused(() => surfacePowerOfRadius(-0.9, 1.5), 'radius', -0.9);
    expect(surfacePowerOfRadius(-1, 1.5)).toBe(-500);
    expect(surfacePowerOfRadius(1, 1.5)).toBe(500);
    expect(surfacePowerOfRadius(-1e6, 1.5)).toBeCloseTo(-0.0005, 12);
    refused(() => radiusOfSurface(60.1, 1.5), 'surface power', 60.1);
    refused(() => radiusOfSurface(-60.1, 1.5), 'surface power', -60.1);
    refused(() => radiusOfSurface(1, 1), 'index', 1);
    refused(() => surfacePowerOfRadius(0, 1.5), 'radius', 0);
    refused(() => surfacePowerOfRadius(-1e6 - 1, 1.5), 'radius', -1e6 - 1);
    refused(() => surfacePowerOfRadius(1, 3.1), 'index', 3.1);
    refused(() => curvature(61, 1.5), 'surface power', 61);
    refused(() => curvature(1, 0.9), 'index', 0.9);
  });
});

describe('toric form', () => {
  test('a plano base is taken as plus, and axis 90 turns to 180', () => {
    expect(toricForm({ sphere: 3, cylinder: -1, axis: 180 }, 0)).toEqual({
      sphericalSide: 2,
      base: { power: 0, axis: 180 },
      cross: { power: 1, axis: 90 },
    });
  });

  test('the offered choice of mrcophth.com, clinical optics questions 7, that recomputes', () => {
    expect(toricForm({ sphere: 3, cylinder: -1, axis: 90 }, -5)).toEqual({
      sphericalSide: 8,
      base: { power: -5, axis: 180 },
      cross: { power: -6, axis: 90 },
    });
    refused(() => toricForm({ sphere: 3, cylinder: -1, axis: 90 }, 60.1), 'base curve', 60.1);
    refused(() => toricForm({ sphere: 3, cylinder: -1, axis: 90 }, -60.1), 'base curve', -60.1);
  });
});

describe('toric surface', () => {
  test('has exact circles as principal sections', () => {
    expect(toricSag(1 / 50, 1 / 100, 30, 0)).toBeCloseTo(10, 12);
    expect(toricSag(1 / 50, 1 / 100, 0, 60)).toBeCloseTo(20, 12);
    expect(toricSag(1 / 100, 1 / 50, 60, 0)).toBeCloseTo(20, 12);
    expect(toricSag(1 / 100, 1 / 50, 0, -30)).toBeCloseTo(10, 12);
  });

  test('is a sphere when both curves are alike, and a cylinder when one is flat', () => {
    expect(toricSag(1 / 50, 1 / 50, 24, 18)).toBeCloseTo(10, 12);
    expect(toricSag(1 / 50, 0, 30, 77)).toBeCloseTo(10, 12);
    expect(toricSag(0, -1 / 50, 77, 30)).toBeCloseTo(-10, 12);
    expect(toricSag(0, 0, 5, 5)).toBe(0);
  });

  test.each([
    [1 / 60, 1 / 90, 12, 17],
    [-1 / 60, -1 / 90, -12, 17],
    [1 / 60, -1 / 90, 12, 17],
    [-1 / 80, 1 / 40, 9, -14],
  ])('lies on the torus with curvatures %f and %f at %d, %d', (along, across, u, v) => {
    // The implicit equation of a torus, the steeper circle swept about an axis through the other's centre.
    const z = toricSag(along, across, u, v);
    const steepFirst = Math.abs(along) > Math.abs(across);
    const [circle, sweep, x, y] = steepFirst ? [1 / along, 1 / across, u, v] : [1 / across, 1 / along, v, u];
    const fromAxis = Math.sign(sweep) * Math.hypot(y, sweep - z);
    expect((fromAxis - (sweep - circle)) ** 2 + x ** 2).toBeCloseTo(circle ** 2, 6);
    expect(Math.abs(z - (along * u ** 2 + across * v ** 2) / 2)).toBeLessThan(0.1);
  });

  test('is refused where it does not reach', () => {
    refused(() => toricSag(1 / 50, 1 / 100, 50.1, 0), 'half aperture', 50.1);
    refused(() => toricSag(1 / 1000, 0, 0, 200.1), 'half aperture', 200.1);
    refused(() => toricSag(1 / 1000, 0, 200.1, 0), 'half aperture', 200.1);
    refused(() => toricSag(1.1, 0, 0, 0), 'curvature', 1.1);
    refused(() => toricSag(0, Number.NaN, 0, 0), 'curvature');
    expect(toricSag(1, -1, 0, 1)).toBe(-1);
    expect(toricSag(-1, 1, 0, 1)).toBe(1);
    expect(toricSag(1 / 1000, 0, 0, 200)).toBe(0);
    refused(() => toricSag(1 / 50, 1 / 100, 30, -90.1), 'half aperture', 90.1, { least: 0, most: 90 });
    expect(toricSag(1 / 50, 1 / 100, 30, 90)).toBeCloseTo(100, 9);
  });
});

function numbered(name: string, values: readonly number[]): Record<string, number> {
  return Object.fromEntries(values.map((value, position) => [`${name}${position}`, value]));
}
