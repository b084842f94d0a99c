import { describe, expect, test } from 'vitest';
import {
  blurStrength,
  difference,
  fromVector,
  meanPower,
  residualOfAxisError,
  sum,
  toVector,
} from '../../optics/power-vector';
import { axisErrors, contactSum, tenDegrees } from '../published/axis-error';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([contactSum], ({ first, second }) => ({ ...sum(first, second) }));
  checkPublished(axisErrors, ({ cylinder, axisError }) => {
    const over = residualOfAxisError(cylinder, axisError);
    return { cylinder: Math.abs(over.cylinder), sphere: over.sphere, fromCorrectAxis: 180 - over.axis };
  });
  checkPublished([tenDegrees], ({ cylinder, axisError }) => ({
    share: residualOfAxisError(cylinder, axisError).cylinder / cylinder,
  }));
});

describe('vectors', () => {
  // Our own figures, by hand from the formulas of Thibos, Wheeler & Horner 1997; no printed conversion was found.
  test.each([
    [{ sphere: -2, cylinder: -1, axis: 90 }, { m: -2.5, j0: -0.5, j45: 0 }, 2.5495],
    [{ sphere: -1, cylinder: -2, axis: 180 }, { m: -2, j0: 1, j45: 0 }, 2.2361],
    [{ sphere: 3, cylinder: -1.5, axis: 45 }, { m: 2.25, j0: 0, j45: 0.75 }, 2.3717],
    [{ sphere: 1, cylinder: -0.5, axis: 30 }, { m: 0.75, j0: 0.125, j45: 0.2165 }, 0.7906],
  ])('%o', (power, vector, blur) => {
    close(toVector(power), vector, 5e-5);
    close(fromVector(toVector(power)), power, 1e-9);
    expect(blurStrength(power)).toBeCloseTo(blur, 4);
  });

  test('axes come back above 0 and up to 180', () => {
    for (const axis of [0.5, 45, 90, 91, 135, 179.5, 180]) {
      close(fromVector(toVector({ sphere: 0, cylinder: -1, axis })), { sphere: 0, cylinder: -1, axis }, 1e-9);
    }
  });

  test('no cross-cylinder is a sphere with axis 180', () => {
    expect(fromVector({ m: -1, j0: 0, j45: 0 })).toEqual({ sphere: -1, cylinder: 0, axis: 180 });
    expect(fromVector({ m: -1, j0: 9e-13, j45: 0 })).toEqual({ sphere: -1, cylinder: 0, axis: 180 });
    expect(fromVector({ m: -1, j0: 2e-12, j45: 0 }).cylinder).toBeLessThan(0);
    expect(toVector({ sphere: 0, cylinder: 0, axis: 180 })).toEqual({ m: 0, j0: 0, j45: 0 });
    expect(toVector({ sphere: 0, cylinder: 0, axis: 45 })).toEqual({ m: 0, j0: 0, j45: 0 });
    expect(toVector({ sphere: -0, cylinder: -0, axis: 180 })).toEqual({ m: 0, j0: 0, j45: 0 });
  });

  test('components beyond 80 D are refused, 80 D is not', () => {
    close(fromVector({ m: 80, j0: -80, j45: 0 }), { sphere: 160, cylinder: -160, axis: 90 }, 1e-9);
    refused(() => fromVector({ m: 80.1, j0: 0, j45: 0 }), 'm', 80.1);
    refused(() => fromVector({ m: 0, j0: -80.1, j45: 0 }), 'j0', -80.1);
    refused(() => fromVector({ m: 0, j0: 0, j45: Number.NaN }), 'j45');
    refused(() => toVector({ sphere: 41, cylinder: 0, axis: 180 }), 'sphere', 41);
  });
});

describe('lenses together', () => {
  test('cylinders crossed at 90 are not subtracted', () => {
    const crossed = sum({ sphere: 0, cylinder: 2, axis: 120 }, { sphere: 0, cylinder: -2.25, axis: 30 });
    close(crossed, { sphere: 2, cylinder: -4.25, axis: 30 }, 1e-9);
  });

  test('a lens less itself is nothing, and less its negative twice itself', () => {
    const lens = { sphere: 3, cylinder: -1, axis: 70 };
    close(difference(lens, lens), { sphere: 0, cylinder: 0, axis: 180 }, 1e-9);
    close(difference(lens, { sphere: -3, cylinder: 1, axis: 70 }), { sphere: 6, cylinder: -2, axis: 70 }, 1e-9);
    close(difference({ sphere: 1, cylinder: 0, axis: 180 }, lens), { sphere: -1, cylinder: -1, axis: 160 }, 1e-9);
  });

  test('readings average round the half circle', () => {
    const mean = meanPower([
      { sphere: -1, cylinder: -1, axis: 178 },
      { sphere: -1, cylinder: -1, axis: 2 },
    ]);
    expect(mean.axis).toBeCloseTo(180, 9);
    expect(mean.cylinder).toBeCloseTo(-Math.cos((4 * Math.PI) / 180), 9);
    close(meanPower([{ sphere: 1, cylinder: 1, axis: 90 }]), { sphere: 2, cylinder: -1, axis: 180 }, 1e-9);
    refused(() => meanPower([]), 'number of powers', 0, { least: 1 });
  });
});

describe('axis error', () => {
  test('the worked case of the course: -2.00 x 180 worn at 10', () => {
    close(residualOfAxisError(-2, 10), { sphere: 0.3473, cylinder: -0.6946, axis: 140 }, 5e-5);
  });

  test.each([
    [-2, 10],
    [-2, -10],
    [3, 25],
    [3, -25],
    [-1, 90],
    [1, -90],
    [-0.75, 1],
  ])('is the wanted lens less the worn one: %d D, %d degrees', (cylinder, axisError) => {
    const wanted = { sphere: 0, cylinder, axis: 180 };
    const worn = { sphere: 0, cylinder, axis: axisError > 0 ? axisError : axisError + 180 };
    close(residualOfAxisError(cylinder, axisError), difference(wanted, worn), 1e-9);
  });

  test('30 degrees off leave the whole cylinder', () => {
    expect(residualOfAxisError(-1.25, 30).cylinder).toBeCloseTo(-1.25, 9);
    expect(blurStrength(residualOfAxisError(-1.25, 30))).toBeCloseTo(0.625, 9);
  });

  test('no cylinder or no error leaves nothing', () => {
    const nothing = { sphere: 0, cylinder: 0, axis: 180 };
    expect(residualOfAxisError(0, 20)).toEqual(nothing);
    expect(residualOfAxisError(-2, 0)).toEqual(nothing);
    refused(() => residualOfAxisError(-2, 90.1), 'axis error', 90.1);
    refused(() => residualOfAxisError(-2, -90.1), 'axis error', -90.1);
    refused(() => residualOfAxisError(40.1, 1), 'cylinder', 40.1);
  });
});
