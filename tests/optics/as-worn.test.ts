import { describe, expect, test } from 'vitest';
import {
  compensatedOrder,
  effectiveTilt,
  obliqueFactor,
  powerForWear,
  prismFromWrap,
  wornPower,
} from '../../optics/as-worn';
import { martinFactor, martinTilt } from '../../optics/martin';
import { powerAt } from '../../optics/power';
import { powerForVertex } from '../../optics/vertex';
import { tiltedSpheres, tiltSteps } from '../published/as-worn';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

const upright = { eye: 'R', pantoscopic: 0, wrap: 0 } as const;

describe('printed answers', () => {
  checkPublished(tiltedSpheres, ({ sphere, tilt }) => ({ ...martinTilt(sphere, tilt) }));
  checkPublished([tiltSteps], ({ tilt }) => {
    const { sphere, cylinder } = martinTilt(10, tilt);
    return { gain: martinFactor(tilt, 1.5) - 1, tangentSquared: cylinder / sphere };
  });
  // The same printed lenses through the matrix form, with the classical factor.
  checkPublished(tiltedSpheres, ({ sphere, tilt }) => {
    const worn = wornPower({ sphere, cylinder: 0, axis: 180 }, { ...upright, pantoscopic: tilt }, 1.5, martinFactor);
    const sphereAt180 = powerAt(worn, 180);
    return { sphere: sphereAt180, cylinder: powerAt(worn, 90) - sphereAt180, axis: 180 };
  });
});

describe('classical formula', () => {
  test('wrap has its axis at 90, tilt at 180, and the sign of the sphere', () => {
    expect(martinTilt(15, 10, 1.5, 90).axis).toBe(90);
    expect(martinTilt(-15, -10, 1.5, 90).cylinder).toBeCloseTo(-0.4711, 4);
    expect(martinTilt(5, 0)).toEqual({ sphere: 5, cylinder: 0, axis: 180 });
    expect(martinTilt(5, 0, 1.5, 90)).toEqual({ sphere: 5, cylinder: 0, axis: 180 });
    expect(martinTilt(0, 10)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
    expect(martinTilt(10, 10, 1.7).sphere).toBeCloseTo(10 * (1 + 0.0301537 / 3.4), 5);
  });

  test('is refused out of range', () => {
    refused(() => martinTilt(40.1, 1), 'sphere', 40.1);
    refused(() => martinTilt(1, 45.1), 'tilt', 45.1);
    refused(() => martinTilt(1, -45.1), 'tilt', -45.1);
    refused(() => martinTilt(1, 1, 1), 'index', 1);
    refused(() => martinFactor(75.1, 1.5), 'tilt', 75.1);
    refused(() => martinFactor(-75.1, 1.5), 'tilt', -75.1);
    refused(() => martinFactor(1, 3.1), 'index', 3.1);
    expect(martinFactor(75, 1.5)).toBeCloseTo(1 + Math.sin((75 * Math.PI) / 180) ** 2 / 3, 12);
  });
});

describe('tilt of tip and wrap together', () => {
  test.each([
    [6, 8, 9.988],
    [0, 15, 15],
    [10, 0, 10],
    [-10, 0, 10],
    [0, -15, 15],
    [0, 0, 0],
  ])('%d and %d make %f', (pantoscopic, wrap, tilt) => {
    expect(effectiveTilt(pantoscopic, wrap)).toBeCloseTo(tilt, 3);
    const cosines = Math.cos((pantoscopic * Math.PI) / 180) * Math.cos((wrap * Math.PI) / 180);
    expect(Math.cos((effectiveTilt(pantoscopic, wrap) * Math.PI) / 180)).toBeCloseTo(cosines, 12);
  });

  test('is refused beyond 45 degrees', () => {
    expect(effectiveTilt(45, -45)).toBeCloseTo(60, 9);
    refused(() => effectiveTilt(45.1, 0), 'pantoscopic tilt', 45.1);
    refused(() => effectiveTilt(-45.1, 0), 'pantoscopic tilt', -45.1);
    refused(() => effectiveTilt(0, 45.1), 'wrap', 45.1);
    refused(() => effectiveTilt(0, -45.1), 'wrap', -45.1);
  });
});

describe('worn power', () => {
  const lens = { sphere: -6, cylinder: -2, axis: 180 };

  test('of -6.00 -2.00 x 180 wrapped by 15 degrees, classical factor (our own figures)', () => {
    const worn = wornPower(lens, { eye: 'R', pantoscopic: 0, wrap: 15 }, 1.5, martinFactor);
    expect(powerAt(worn, 90)).toBeCloseTo(-8.179, 3);
    expect(powerAt(worn, 180)).toBeCloseTo(-6.574, 3);
  });

  test('an upright lens is worn as it is', () => close(wornPower(lens, upright, 1.5), lens, 1e-9));

  test('the two eyes mirror each other', () => {
    const right = wornPower({ ...lens, axis: 30 }, { eye: 'R', pantoscopic: 12, wrap: 20 }, 1.6);
    const left = wornPower({ ...lens, axis: 150 }, { eye: 'L', pantoscopic: 12, wrap: 20 }, 1.6);
    close(left, { ...right, axis: 180 - right.axis }, 1e-9);
  });

  test('both together turn the cylinder of a sphere', () => {
    const sphere = { sphere: 8, cylinder: 0, axis: 180 };
    const right = wornPower(sphere, { eye: 'R', pantoscopic: 10, wrap: 10 }, 1.5);
    // Plus cylinder along the tilt axis, 135 before the right eye: the minus axis stands near 45.
    expect(right.axis).toBeGreaterThan(44);
    expect(right.axis).toBeLessThan(46);
  });

  test('the order undoes the tilt, whichever factor is used', () => {
    for (const factor of [obliqueFactor, martinFactor]) {
      for (const eye of ['R', 'L'] as const) {
        const position = { eye, pantoscopic: 12, wrap: 20 };
        const wanted = { sphere: -4.5, cylinder: -0.75, axis: 22 };
        close(wornPower(powerForWear(wanted, position, 1.6, factor), position, 1.6, factor), wanted, 1e-9);
      }
    }
  });

  test('the factor is exact: Snell in the limit of a head-on lens, more at higher tilt', () => {
    expect(obliqueFactor(0, 1.5)).toBe(1);
    // By hand: sine of 30 degrees is one half.
    expect(obliqueFactor(30, 1.5)).toBeCloseTo((Math.SQRT2 - Math.sqrt(3) / 2) / 0.5, 12);
    expect(obliqueFactor(-30, 1.5)).toBe(obliqueFactor(30, 1.5));
    expect(obliqueFactor(75, 1.5)).toBeGreaterThan(1);
    refused(() => obliqueFactor(75.1, 1.5), 'tilt', 75.1);
    refused(() => obliqueFactor(-75.1, 1.5), 'tilt', -75.1);
    refused(() => obliqueFactor(10, 1), 'index', 1);
  });

  test('is refused out of range', () => {
    refused(() => wornPower(lens, { ...upright, wrap: 45.1 }, 1.5), 'wrap', 45.1);
    refused(() => wornPower({ ...lens, sphere: 41 }, upright, 1.5), 'sphere', 41);
    refused(() => wornPower(lens, upright, 1), 'index', 1);
    refused(() => powerForWear(lens, { ...upright, pantoscopic: 45.1 }, 1.5), 'pantoscopic tilt', 45.1);
    refused(() => powerForWear({ ...lens, axis: 0 }, upright, 1.5), 'axis', 0);
    refused(() => powerForWear(lens, upright, 3.1), 'index', 3.1);
  });
});

describe('compensated order', () => {
  const prescription = { sphere: -8, cylinder: -2, axis: 15 };
  const position = { eye: 'L', pantoscopic: 9, wrap: 6 } as const;

  test('carries the vergence first and then takes out the tilt', () => {
    const order = compensatedOrder(prescription, { tested: 12, worn: 14 }, position, 1.6);
    close(wornPower(order, position, 1.6), powerForVertex(prescription, 12, 14), 1e-9);
    close(compensatedOrder(prescription, { tested: 12, worn: 12 }, upright, 1.6), prescription, 1e-9);
  });

  test('a tilted minus lens is ordered weaker', () => {
    const order = compensatedOrder({ sphere: -8, cylinder: 0, axis: 180 }, { tested: 12, worn: 12 }, position, 1.6);
    expect(order.sphere).toBeGreaterThan(-8);
    expect(order.sphere + order.cylinder).toBeGreaterThan(-8);
  });
});

describe('prism from wrap', () => {
  test('grows with front power, thickness and wrap (our own figure)', () => {
    expect(prismFromWrap(8, 2, 1.586, 15)).toBeCloseTo(0.2611, 4);
    expect(prismFromWrap(0, 2, 1.586, -15)).toBe(0);
    expect(prismFromWrap(8, 2, 1.586, -15)).toBeCloseTo(-0.2611, 4);
    expect(prismFromWrap(-60, 50, 3, 45)).toBeCloseTo(-70.71, 2);
    expect(prismFromWrap(60, 0, 3, -45)).toBe(0);
  });

  test('is refused out of range', () => {
    refused(() => prismFromWrap(60.1, 2, 1.5, 1), 'front surface power', 60.1);
    refused(() => prismFromWrap(-60.1, 2, 1.5, 1), 'front surface power', -60.1);
    refused(() => prismFromWrap(8, -0.1, 1.5, 1), 'thickness', -0.1);
    refused(() => prismFromWrap(8, 50.1, 1.5, 1), 'thickness', 50.1);
    refused(() => prismFromWrap(8, 2, 1, 1), 'index', 1);
    refused(() => prismFromWrap(8, 2, 1.5, 45.1), 'wrap', 45.1);
    refused(() => prismFromWrap(8, 2, 1.5, -45.1), 'wrap', -45.1);
  });
});
