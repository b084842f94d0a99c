import { radians } from './angles';
import { type BoxedShape, outlineCorners, outlineRadius } from './outline';
import type { Displacement } from './prism';
import { DISPLACEMENT, within } from './range';
import { type MadeLens, thicknessProfile } from './thickness';

/** Abscissae and weights of the eight-point Gauss rule on -1 to 1, positive half. */
const GAUSS = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
] as const;

/**
 * Returns the volume (cubic millimetres) of a lens cut to the assumed outline of `shape`, its optical centre standing
 * `opticalCentre` (millimetres, examiner's right and up positive) from the boxed centre. The thickness is
 * summed by Gauss's rule between the corners, which is right to nine digits for lenses that can be made. A lens that ends before the outline does, or values outside their
 * range, throw OutOfRange.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.30.
 */
export function volume(lens: MadeLens, shape: BoxedShape, opticalCentre: Displacement): number {
  const x = within('optical centre to the right', opticalCentre.right, DISPLACEMENT);
  const y = within('optical centre upwards', opticalCentre.up, DISPLACEMENT);
  const thickness = thicknessProfile(lens);
  const ray = (direction: number) => {
    const cosine = Math.cos(radians(direction));
    const sine = Math.sin(radians(direction));
    return integral(0, outlineRadius(shape, direction), (radius) => {
      const point = { right: radius * cosine - x, up: radius * sine - y };
      return radius * within('thickness', thickness(point), { least: 0 });
    });
  };
  const corners = outlineCorners(shape);
  const total = corners.slice(1).reduce((sum, end, position) => sum + integral(corners[position] ?? end, end, ray), 0);
  return radians(total);
}

/**
 * Returns the weight (grams) of a lens from its volume (cubic millimetres, 0 to 1 000 000) and the density of its material
 * (grams per cubic centimetre, 0.5 to 10). Other values throw OutOfRange.
 * Source: definition of density.
 */
export function weight(volume: number, density: number): number {
  const cubicCentimetres = within('volume', volume, { least: 0, most: 1e6 }) / 1000;
  return cubicCentimetres * within('density', density, { least: 0.5, most: 10 });
}

function integral(from: number, to: number, value: (at: number) => number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let total = 0;
  for (const [place, share] of GAUSS) total += share * (value(middle - half * place) + value(middle + half * place));
  return half * total;
}
