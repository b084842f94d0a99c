import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { powerForWear, wornPower } from '../../optics/as-worn';
import { crossedCylinders } from '../../optics/crossed-cylinders';
import { expectedDrum } from '../../optics/focimeter';
import { insetByConvergence } from '../../optics/layout';
import { dialReading, surfacePower } from '../../optics/lens-clock';
import { martinTilt } from '../../optics/martin';
import { outlinePoints } from '../../optics/outline';
import {
  axisDistance,
  fromMeridians,
  minusForm,
  normalAxis,
  plusForm,
  powerAt,
  principalMeridians,
  sphericalEquivalent,
  transpose,
} from '../../optics/power';
import { fromMatrix, toMatrix } from '../../optics/power-matrix';
import {
  blurStrength,
  difference,
  fromVector,
  meanPower,
  residualOfAxisError,
  sum,
  toVector,
} from '../../optics/power-vector';
import { componentsFromBase, prentice, prismBeforeEye, prismInFrame, resultant } from '../../optics/prism';
import { decentrationForPrism, verticalPrismZone } from '../../optics/prism-decentration';
import { OutOfRange } from '../../optics/range';
import { unequalRoundSegments } from '../../optics/segment-prism';
import { radiusFromSag, radiusOfSurface, sag, surfacePowerOfRadius } from '../../optics/surfaces';
import { backSurfaceFor, backVertexPower, frontVertexPower } from '../../optics/thick-lens';
import { centreThicknessFor, edgeThickness, thicknessAt } from '../../optics/thickness';
import { toricSag } from '../../optics/toric-surface';
import { effectivePower, nearPowerForVertex, powerForVertex } from '../../optics/vertex';
import { axis, holds, lens, real, seed } from './support/arbitraries';
import { close } from './support/close';

const eye = fc.constantFrom('R' as const, 'L' as const);

describe(`forms of a lens (seed ${seed})`, () => {
  test('transposing twice gives the lens back', () =>
    holds(lens(), (power) => close(transpose(transpose(power)), power, 1e-9)));

  test('spherical equivalent, vector and power in any meridian survive transposition', () =>
    holds(lens(), axis, (power, meridian) => {
      const other = transpose(power);
      expect(sphericalEquivalent(other)).toBeCloseTo(sphericalEquivalent(power), 9);
      close(toVector(other), toVector(power), 1e-9);
      expect(blurStrength(other)).toBeCloseTo(blurStrength(power), 9);
      expect(powerAt(other, meridian)).toBeCloseTo(powerAt(power, meridian), 9);
    }));

  test('minus form has no plus cylinder, plus form no minus one, and each is the other transposed', () =>
    holds(lens(), (power) => {
      expect(minusForm(power).cylinder).toBeLessThanOrEqual(0);
      expect(plusForm(power).cylinder).toBeGreaterThanOrEqual(0);
      close(transpose(minusForm(power)), plusForm(power), 1e-9);
      for (const form of [minusForm(power), plusForm(power)]) {
        expect(Object.values(form).some((value) => Object.is(value, -0))).toBe(false);
        expect(form.axis).toBeGreaterThan(0);
        expect(form.axis).toBeLessThanOrEqual(180);
      }
    }));

  test('the power lies between the principal powers, which stand where the meridians are', () =>
    holds(lens(), axis, (power, meridian) => {
      const [along, across] = principalMeridians(power);
      const value = powerAt(power, meridian);
      expect(value).toBeGreaterThanOrEqual(Math.min(along.power, across.power) - 1e-9);
      expect(value).toBeLessThanOrEqual(Math.max(along.power, across.power) + 1e-9);
      expect(powerAt(power, along.meridian)).toBeCloseTo(along.power, 9);
      expect(powerAt(power, across.meridian)).toBeCloseTo(across.power, 9);
    }));

  test('two meridians make the lens again', () =>
    holds(lens(), (power) => {
      const [along, across] = principalMeridians(power);
      close(fromMeridians(along, across), minusForm(power), 1e-9);
      close(fromMeridians(across, along), minusForm(power), 1e-9);
    }));

  test('axes are normal, and their distance is symmetric and at most 90', () =>
    holds(real(-720, 720), real(-720, 720), (first, second) => {
      expect(normalAxis(first)).toBeGreaterThan(0);
      expect(normalAxis(first)).toBeLessThanOrEqual(180);
      expect(normalAxis(normalAxis(first))).toBe(normalAxis(first));
      const apart = axisDistance(first, second);
      expect(apart).toBe(axisDistance(second, first));
      expect(apart).toBeGreaterThanOrEqual(0);
      expect(apart).toBeLessThanOrEqual(90);
    }));
});

describe(`vectors and matrices (seed ${seed})`, () => {
  test('come back as the lens', () =>
    holds(lens(), (power) => {
      // A cylinder of a thousandth of a dioptre still has an axis to a millionth of a degree.
      fc.pre(power.cylinder === 0 || Math.abs(power.cylinder) > 1e-3);
      close(fromVector(toVector(power)), minusForm(power), 1e-6);
      close(fromMatrix(toMatrix(power)), minusForm(power), 1e-6);
    }));

  test('a lens and its negative are plano', () =>
    holds(lens(), (power) => {
      const negative = { sphere: -power.sphere, cylinder: -power.cylinder, axis: power.axis };
      expect(blurOf(sum(power, negative))).toBeLessThan(1e-9);
      expect(blurOf(difference(power, power))).toBeLessThan(1e-9);
    }));

  test('difference undoes sum, and sum has no order', () =>
    holds(lens(20), lens(20), (first, second) => {
      const together = sum(first, second);
      close(toVector(difference(together, second)), toVector(first), 1e-9);
      close(toVector(sum(second, first)), toVector(together), 1e-9);
    }));

  test('the mean of one lens in both forms is the lens', () =>
    holds(lens(), (power) => {
      close(toVector(meanPower([power, transpose(power), power])), toVector(power), 1e-9);
    }));
});

describe(`prism (seed ${seed})`, () => {
  test('prism, decentration and prism again', () =>
    holds(lens(25), real(-5, 5), real(-5, 5), (power, right, up) => {
      fc.pre(principalMeridians(power).every((meridian) => Math.abs(meridian.power) > 0.25));
      const shift = attempt(() => decentrationForPrism(power, { right, up }));
      if (shift !== undefined) close(prentice(power, shift), { right, up }, 1e-9);
    }));

  test('decentration, prism and decentration again', () =>
    holds(lens(25), real(-10, 10), real(-10, 10), (power, right, up) => {
      fc.pre(principalMeridians(power).every((meridian) => Math.abs(meridian.power) > 0.01));
      close(decentrationForPrism(power, prentice(power, { right, up })), { right, up }, 1e-6);
    }));

  test('parts make one prism and come back', () =>
    holds(real(-50, 50), real(-50, 50), eye, (right, up, which) => {
      const { amount, base } = resultant({ right, up });
      expect(base).toBeGreaterThanOrEqual(0);
      expect(base).toBeLessThan(360);
      close(componentsFromBase(amount, base), { right, up }, 1e-9);
      close(prismInFrame(prismBeforeEye({ right, up }, which), which), { right, up }, 0);
    }));
});

describe(`inverses (seed ${seed})`, () => {
  test('vertex distances there and back', () =>
    holds(lens(20), real(0, 20), real(0, 20), (power, tested, worn) => {
      close(powerForVertex(powerForVertex(power, tested, worn), worn, tested), power, 1e-9);
      close(effectivePower(effectivePower(power, worn), -worn), power, 1e-9);
    }));

  test('radius and sag', () =>
    holds(real(20, 2000), real(0.05, 0.99), fc.constantFrom(1, -1), (radius, part, sign) => {
      const half = Math.min(200, radius * part);
      expect(radiusFromSag(sag(sign * radius, half), half) / (sign * radius)).toBeCloseTo(1, 6);
    }));

  test('surface power, radius and dial', () =>
    holds(real(0.01, 60), real(1.3, 2), fc.constantFrom(1, -1), (power, index, sign) => {
      expect(surfacePowerOfRadius(radiusOfSurface(sign * power, index), index)).toBeCloseTo(sign * power, 9);
      expect(dialReading(surfacePower(sign * power * 0.5, index), index)).toBeCloseTo(sign * power * 0.5, 9);
    }));

  test('the back surface found has the power wanted, and a lens turned over swaps its vertex powers', () =>
    holds(real(-20, 20), real(-2, 15), real(0, 12), real(1.45, 1.9), (power, front, thickness, index) => {
      const back = backSurfaceFor(power, front, thickness, index);
      const made = { front, back, thickness, index };
      expect(backVertexPower(made)).toBeCloseTo(power, 9);
      expect(backVertexPower({ ...made, front: back, back: front })).toBeCloseTo(frontVertexPower(made), 9);
    }));

  test('the power ordered for wear acts as the power wanted', () =>
    holds(lens(20), real(-20, 20), real(-30, 30), real(1.45, 1.9), eye, (power, pantoscopic, wrap, index, which) => {
      const position = { eye: which, pantoscopic, wrap };
      const acting = wornPower(powerForWear(power, position, index), position, index);
      close(toVector(acting), toVector(power), 1e-9);
    }));
});

describe(`thickness (seed ${seed})`, () => {
  const frame = { a: 52, b: 36, ed: 55 };

  test('the solved lens has the edge asked for and, behind it, the power to 1e-9 D', () =>
    fc.assert(
      fc.property(lens(10), real(0, 10), real(1.5, 1.9), real(-5, 5), real(-4, 4), (power, front, index, right, up) => {
        const points = outlinePoints(frame, { right, up }, 10);
        const asked = { edge: 1, centre: 1.2 };
        const centre = attempt(() => centreThicknessFor({ power, front, index }, points, asked));
        if (centre === undefined) return;
        const { thinnest } = edgeThickness({ power, front, index, centre }, points);
        expect(centre).toBeGreaterThanOrEqual(1.2);
        expect(thinnest.thickness).toBeGreaterThanOrEqual(1 - 1e-9);
        if (centre > 1.2) expect(thinnest.thickness).toBeCloseTo(1, 9);
        for (const { power: wanted } of principalMeridians(power)) {
          const back = backSurfaceFor(wanted, front, centre, index);
          expect(Math.abs(backVertexPower({ front, back, thickness: centre, index }) - wanted)).toBeLessThan(1e-9);
        }
      }),
      { seed, numRuns: 200 },
    ));
});

describe(`whatever comes in, a number or OutOfRange comes out (seed ${seed})`, () => {
  const wild = fc.oneof(fc.double(), real(-100, 100), fc.constantFrom(0, -0, 40, -40, 180, 90, Number.NaN, Infinity));

  test.each<[string, (...values: number[]) => unknown]>([
    ['transpose', (sphere, cylinder, angle) => transpose({ sphere, cylinder, axis: angle })],
    ['powerAt', (sphere, cylinder, angle, meridian) => powerAt({ sphere, cylinder, axis: angle }, meridian)],
    ['fromVector', (m, j0, j45) => fromVector({ m, j0, j45 })],
    ['resultant', (right, up) => resultant({ right, up })],
    ['sag', (radius, half) => sag(radius, half)],
    ['backVertexPower', (front, back, thickness, index) => backVertexPower({ front, back, thickness, index })],
    [
      'decentrationForPrism',
      (sphere, cylinder, right, up) => decentrationForPrism({ sphere, cylinder, axis: 30 }, { right, up }),
    ],
    [
      'powerForVertex',
      (sphere, cylinder, tested, worn) => powerForVertex({ sphere, cylinder, axis: 30 }, tested, worn),
    ],
    [
      'wornPower',
      (sphere, cylinder, pantoscopic, wrap) =>
        wornPower({ sphere, cylinder, axis: 30 }, { eye: 'R', pantoscopic, wrap }, 1.5),
    ],
    ['fromMatrix', (xx, xy, yy) => fromMatrix({ xx, xy, yy })],
    ['prentice', (sphere, cylinder, right, up) => prentice({ sphere, cylinder, axis: 30 }, { right, up })],
    ['verticalPrismZone', (sphere, cylinder, axis, limit) => verticalPrismZone({ sphere, cylinder, axis }, limit)],
    ['componentsFromBase', (amount, base) => componentsFromBase(amount, base)],
    ['crossedCylinders', (first, firstAxis, second, axis) => crossedCylinders(first, firstAxis, second, axis)],
    ['unequalRoundSegments', (right, left, add, diameter) => unequalRoundSegments(right, left, add, diameter)],
    ['radiusFromSag', (depth, half) => radiusFromSag(depth, half)],
    ['radiusOfSurface', (power, index) => radiusOfSurface(power, index)],
    ['surfacePowerOfRadius', (radius, index) => surfacePowerOfRadius(radius, index)],
    ['toricSag', (along, across, u, v) => toricSag(along, across, u, v)],
    ['insetByConvergence', (pd, away, power, rotation) => insetByConvergence(pd, away, power, rotation)],
    ['martinTilt', (sphere, tilt, index) => martinTilt(sphere, tilt, index)],
    ['residualOfAxisError', (cylinder, degrees) => residualOfAxisError(cylinder, degrees)],
    [
      'nearPowerForVertex',
      (sphere, tested, worn, away) => nearPowerForVertex({ sphere, cylinder: 0, axis: 180 }, tested, worn, away),
    ],
    [
      'expectedDrum',
      (sphere, front, thickness, index) =>
        expectedDrum({ sphere, cylinder: -1, axis: 30 }, { front, thickness, index }, 'front'),
    ],
    [
      'thicknessAt',
      (sphere, front, centre, up) =>
        thicknessAt({ power: { sphere, cylinder: -1, axis: 30 }, front, index: 1.5, centre }, { right: 1, up }),
    ],
  ])('%s', (_, formula) =>
    holds(wild, wild, wild, wild, (a, b, c, d) => {
      const result = attempt(() => formula(a, b, c, d));
      if (result === undefined) return;
      for (const value of typeof result === 'number' ? [result] : Object.values(result as object)) {
        expect(Number.isFinite(value)).toBe(true);
        expect(Object.is(value, -0)).toBe(false);
      }
    }),
  );
});

/** Returns what a call returns, or undefined where it throws OutOfRange; anything else thrown is a fault. */
function attempt<Result>(call: () => Result): Result | undefined {
  try {
    return call();
  } catch (error) {
    if (error instanceof OutOfRange) return undefined;
    throw error;
  }
}

function blurOf(power: { sphere: number; cylinder: number }): number {
  return Math.abs(power.sphere) + Math.abs(power.cylinder);
}
