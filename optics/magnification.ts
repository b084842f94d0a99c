import { within } from './range';
import { backVertexPower, shapeFactor, type ThickLens } from './thick-lens';

/** Distances from the back of a lens to the entrance pupil, millimetres. */
const PUPIL = { least: 0, most: 100 };

/**
 * Returns the power factor of spectacle magnification, no unit, from the back vertex power (dioptres, within 60) and the
 * distance from the back vertex to the entrance pupil (millimetres, 0 to 100): vertex distance plus about 3 mm. Values outside
 * their range, or a focus before the pupil, throw OutOfRange.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function powerFactor(backVertex: number, toEntrancePupil: number): number {
  const power = within('back vertex power', backVertex, { least: -60, most: 60 });
  const step = (within('distance to the entrance pupil', toEntrancePupil, PUPIL) / 1000) * power;
  return 1 / (1 - within('distance × power', step, { below: 1 }));
}

/**
 * Returns the spectacle magnification, no unit: shape factor times power factor. Distance as for powerFactor; range of the
 * lens as for backVertexPower.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function spectacleMagnification(lens: ThickLens, toEntrancePupil: number): number {
  return shapeFactor(lens.front, lens.thickness, lens.index) * powerFactor(backVertexPower(lens), toEntrancePupil);
}

/**
 * Returns the percentage by which the right eye's image is larger than the left's through the lenses, from the spectacle
 * magnification of each (above 0, at most 10). Other values throw OutOfRange.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function magnificationDifference(right: number, left: number): number {
  const range = { above: 0, most: 10 };
  return 100 * (within('right magnification', right, range) / within('left magnification', left, range) - 1);
}
