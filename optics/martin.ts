import { radians } from './angles';
import type { Power } from './power';
import { EFFECTIVE_TILT, INDEX, POWER, TILT, within } from './range';

/**
 * Returns what a sphere (dioptres, within 40) acts as when tilted by `tilt` degrees (within 45) about a line at `tiltAxis`
 * degrees: 180 for pantoscopic tilt, 90 for wrap. The cylinder has the sign of the sphere and its axis on that line. Many texts
 * write 3 for twice the index; that is `index` 1.5. The optical centre is taken to lie straight before the pupil.
 * Values outside their range throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, lens tilt (Martin's formula).
 */
export function martinTilt(sphere: number, tilt: number, index = 1.5, tiltAxis: 90 | 180 = 180): Power {
  const raised = within('sphere', sphere, POWER) * martinFactor(within('tilt', tilt, TILT), index);
  const cylinder = raised * Math.tan(radians(tilt)) ** 2;
  return cylinder === 0 ? { sphere: raised, cylinder: 0, axis: 180 } : { sphere: raised, cylinder, axis: tiltAxis };
}

/**
 * Returns the factor, no unit, by which a tilted thin lens gains power along the tilt axis, to the third order: 1 plus the
 * squared sine over twice the index. A tilt beyond 75 degrees or an index outside 1 to 3 throws OutOfRange.
 * Source: Durham Technical Community College, OPH 142, lens tilt.
 */
export function martinFactor(tilt: number, index: number): number {
  const sine = Math.sin(radians(within('tilt', tilt, EFFECTIVE_TILT)));
  return 1 + sine ** 2 / (2 * within('index', index, INDEX));
}
