import { describe, expect, test } from 'vitest';
import { addErrorOnOtherSurface, expectedDrum, targetDisplacement } from '../../optics/focimeter';
import { backVertexPower, frontVertexPower, type ThickLens } from '../../optics/thick-lens';
import { crossing, lensOf, type Surface, slopes, trace } from './support/ray-trace';

/** So near the axis, in millimetres, aberrations are below a millionth of a dioptre. */
const NARROW = 0.01;
/** Half of a focimeter aperture of 4 mm. */
const APERTURE = 2;

const lenses: readonly ThickLens[] = [
  { front: 3, back: -8.5, thickness: 2.2, index: 1.498 },
  { front: 9.5, back: -3.25, thickness: 5.7, index: 1.498 },
  { front: 10.25, back: -3, thickness: 4, index: 1.586 },
  { front: 15, back: -6, thickness: 6.5, index: 1.523 },
  { front: 4, back: -14, thickness: 1, index: 1.66 },
  { front: -2, back: -6, thickness: 1.5, index: 1.74 },
];

describe('vertex powers agree with exact rays near the axis', () => {
  test.each(lenses)('%o', (lens) => {
    expect(traced(asSurfaces(lens), NARROW)).toBeCloseTo(backVertexPower(lens), 4);
    expect(traced(asSurfaces(reversed(lens)), NARROW)).toBeCloseTo(frontVertexPower(lens), 4);
  });
});

describe('at the rim of a 4 mm aperture the focus differs from the paraxial one by', () => {
  // Our own figures: this trace and a second one written with plane trigonometry gave the same digits.
  test.each([
    [0, -0.0068],
    [1, 0.0033],
    [2, 0.0027],
    [3, 0.0122],
    [4, -0.0221],
    [5, -0.0038],
  ])('lens %d: %f D, less than the 0.06 D of an ordinary focimeter', (position, excess) => {
    const lens = lenses[position] as ThickLens;
    expect(traced(asSurfaces(lens), APERTURE) - backVertexPower(lens)).toBeCloseTo(excess, 4);
    expect(Math.abs(excess)).toBeLessThan(0.06);
  });
});

describe('a focimeter brought to sharpness by rays', () => {
  const standard = 20;

  test.each([-10, -3, 0.5, 4, 12])('moves its target as predicted for a thin lens of %d D', (power) => {
    const thin = lensOf(radius(power / 2, 1.5), -radius(power / 2, 1.5), 1e-6, 1.5);
    expect(sharpAt(thin, standard, NARROW)).toBeCloseTo(targetDisplacement(power, standard), 4);
  });

  test.each(lenses)('shows the expected drum with either surface on the stop: %o', (lens) => {
    const power = { sphere: backVertexPower(lens), cylinder: 0, axis: 180 };
    // Light leaves the stop and meets the surface standing on it first.
    expect(drum(asSurfaces(reversed(lens)), standard)).toBeCloseTo(expectedDrum(power, lens, 'back').thin, 4);
    expect(drum(asSurfaces(lens), standard)).toBeCloseTo(expectedDrum(power, lens, 'front').thin, 4);
  });

  test('shows the add of a front segment right from the front and too high from the back', () => {
    const distance: ThickLens = { front: 14, back: -3, thickness: 9, index: 1.498 };
    const segment: ThickLens = { ...distance, front: 17 };
    const fromFront = drum(asSurfaces(segment), standard) - drum(asSurfaces(distance), standard);
    const fromBack = drum(asSurfaces(reversed(segment)), standard) - drum(asSurfaces(reversed(distance)), standard);
    expect(fromFront).toBeCloseTo(3, 4);
    expect(fromBack - 3).toBeCloseTo(addErrorOnOtherSurface(14, 3, 9, 1.498), 4);
  });
});

function asSurfaces(lens: ThickLens): Surface[] {
  return lensOf(radius(lens.front, lens.index), -radius(lens.back, lens.index), lens.thickness, lens.index);
}

function reversed(lens: ThickLens): ThickLens {
  return { ...lens, front: lens.back, back: lens.front };
}

function radius(power: number, index: number): number {
  return (1000 * (index - 1)) / power;
}

/** The power, from the back vertex, with which a ray parallel to the axis at `height` crosses it. */
function traced(surfaces: readonly Surface[], height: number): number {
  const ray = trace({ from: [0, height, -20], along: [0, 0, 1] }, surfaces);
  const back = surfaces.at(-1)?.vertex ?? Number.NaN;
  return 1000 / (crossing(ray) - back);
}

/** The place of the target (towards the standard lens positive) from which light leaves the lens parallel to the axis. */
function sharpAt(surfaces: readonly Surface[], standard: number, height: number): number {
  const focal = 1000 / standard;
  const leaving = (displacement: number) => {
    // The target stands before an ideal standard lens, whose other focus is the stop, where the first surface begins.
    const object = focal - displacement;
    const slope = height / object - height / focal;
    const ray = trace({ from: [0, height, -focal], along: [0, slope, 1] }, surfaces);
    return slopes(ray)[1];
  };
  let [low, high] = [-focal * 2, focal * 0.99];
  for (let round = 0; round < 200; round++) {
    const middle = (low + high) / 2;
    if (leaving(low) > 0 === leaving(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

function drum(surfaces: readonly Surface[], standard: number): number {
  return (sharpAt(surfaces, standard, NARROW) * standard ** 2) / 1000;
}
