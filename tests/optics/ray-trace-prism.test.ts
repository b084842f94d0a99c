import { describe, expect, test } from 'vitest';
import { obliqueFactor, prismFromWrap, wornPower } from '../../optics/as-worn';
import { martinFactor } from '../../optics/martin';
import type { Power } from '../../optics/power';
import { toMatrix } from '../../optics/power-matrix';
import { prentice } from '../../optics/prism';
import { backSurfaceFor } from '../../optics/thick-lens';
import { lensOf, type Ray, type Surface, slopes, tilt, trace, untilt } from './support/ray-trace';

const index = 1.523;

describe('prism off the optical centre agrees with exact rays near the axis', () => {
  test.each<[Power, number, number]>([
    [{ sphere: 5, cylinder: 0, axis: 180 }, 0.2, -0.3],
    [{ sphere: -8, cylinder: 0, axis: 180 }, 0.1, 0.2],
    [{ sphere: 6, cylinder: -3, axis: 140 }, -0.25, 0.11],
    [{ sphere: 2, cylinder: -4, axis: 135 }, 0, 0.5],
    [{ sphere: -4, cylinder: -2, axis: 20 }, 0.3, 0.3],
  ])('%o', (power, right, up) => {
    const [x, y] = deviation(power, right, up);
    const prism = prentice(power, { right, up });
    // Light is bent towards the base.
    expect(100 * x).toBeCloseTo(prism.right, 4);
    expect(100 * y).toBeCloseTo(prism.up, 4);
  });

  test('2 mm off the centre of +8.50 the exact deviation is within 1 % of the rule', () => {
    const power = { sphere: 8.5, cylinder: 0, axis: 180 };
    const [, y] = deviation(power, 0, 2);
    expect(Math.abs(100 * y - 1.7)).toBeLessThan(0.017);
  });
});

describe('wrap', () => {
  const [front, thickness] = [8, 2];
  const back = backSurfaceFor(0, front, thickness, index);
  const shell = lensOf(radius(front), -radius(back), thickness, index);

  test.each([1, 5, 15])('of %d degrees gives a plano right lens the predicted prism, base out', (wrap) => {
    // The outward normal of the right lens leans to the temporal side, the examiner's left: the ray is turned the other way.
    const ray: Ray = { from: [0, 0, -10], along: [0, 0, 1] };
    const out = tilt(trace(untilt(ray, 0, wrap), shell), 0, wrap);
    const [x] = slopes(out);
    const predicted = prismFromWrap(front, thickness, index, wrap);
    expect(x).toBeLessThan(0);
    expect(Math.abs(-100 * x - predicted)).toBeLessThan(predicted * (wrap > 5 ? 0.12 : 0.03));
  });
});

describe('a thin lens tipped and wrapped acts as the tilted matrix says', () => {
  const powers: readonly Power[] = [
    { sphere: 6, cylinder: 0, axis: 180 },
    { sphere: -8, cylinder: 0, axis: 180 },
    { sphere: 6, cylinder: -3, axis: 140 },
    { sphere: -4, cylinder: -2, axis: 20 },
  ];
  const positions = [
    { pantoscopic: 10, wrap: 0 },
    { pantoscopic: 0, wrap: 15 },
    { pantoscopic: 12, wrap: 20 },
    { pantoscopic: 25, wrap: 25 },
    { pantoscopic: -10, wrap: 5 },
  ];

  for (const power of powers) {
    for (const position of positions) {
      test.each(['R', 'L'] as const)(`${JSON.stringify({ ...power, ...position })} %s`, (eye) => {
        const worn = toMatrix(wornPower(power, { ...position, eye }, index));
        const seen = tracedMatrix(power, position.pantoscopic, eye === 'R' ? position.wrap : -position.wrap);
        expect(worn.xx).toBeCloseTo(seen.xx, 3);
        expect(worn.yy).toBeCloseTo(seen.yy, 3);
        expect(worn.xy).toBeCloseTo(seen.xy, 3);
        expect(worn.xy).toBeCloseTo(seen.yx, 3);
      });
    }
  }

  test('the classical factor is right to a thousandth up to 10 degrees and falls short beyond', () => {
    expect(martinFactor(10, 1.5)).toBeCloseTo(obliqueFactor(10, 1.5), 3);
    expect(obliqueFactor(30, 1.5) - martinFactor(30, 1.5)).toBeGreaterThan(0.01);
  });
});

/** A lens of negligible thickness with a spherical front and a cylindrical back, or a spherical one, of the given power. */
function thin(power: Power): Surface[] {
  const [glass, across] = [1e-5, -radius(power.cylinder)];
  if (power.cylinder !== 0) return lensOf(radius(power.sphere), across, glass, index, power.axis);
  return lensOf(radius(power.sphere / 2), -radius(power.sphere / 2), glass, index);
}

/** The slopes, along x and y, of a straight ray that meets a lens whose optical centre stands off by `right` and `up`. */
function deviation(power: Power, right: number, up: number): readonly [number, number] {
  return slopes(trace({ from: [-right, -up, -5], along: [0, 0, 1] }, thin(power)));
}

function radius(power: number): number {
  return (1000 * (index - 1)) / power;
}

function tracedMatrix(power: Power, pantoscopic: number, swing: number) {
  const small = 1e-3;
  const surfaces = thin(power);
  const leaving = (x: number, y: number) => {
    const inside = untilt({ from: [x, y, -10], along: [0, 0, 1] }, pantoscopic, swing);
    return slopes(tilt(trace(inside, surfaces), pantoscopic, swing));
  };
  const difference = (a: readonly [number, number], b: readonly [number, number]) =>
    [((b[0] - a[0]) / (2 * small)) * 1000, ((b[1] - a[1]) / (2 * small)) * 1000] as const;
  const [xx, xy] = difference(leaving(small, 0), leaving(-small, 0));
  const [yx, yy] = difference(leaving(0, small), leaving(0, -small));
  return { xx, xy, yx, yy };
}
