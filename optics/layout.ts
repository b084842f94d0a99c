import { radians } from './angles';
import { TILT, within } from './range';

/** Lengths on a frame, millimetres. */
const LENGTH = { least: 0, most: 200 };
/** Pupil distances, millimetres: a child's half distance up to the widest pair. */
const PUPIL_DISTANCE = { least: 15, most: 100 };

/**
 * Returns the horizontal decentration of each lens (millimetres, positive inwards) from the boxed lens width `a`, the
 * distance between lenses `dbl` and the binocular pupil distance `pd`. Lengths outside 0 to 200 mm, or a pupil distance
 * outside 15 to 100 mm, throw OutOfRange.
 * Source: OpticalCourse free dispensing course, quiz answers.
 */
export function decentration(a: number, dbl: number, pd: number): number {
  return monocularDecentration(a, dbl, within('pupil distance', pd, PUPIL_DISTANCE) / 2);
}

/**
 * Returns the horizontal decentration of one lens (millimetres, positive inwards) from the boxed lens width `a`, the
 * distance between lenses `dbl` and the pupil distance of that eye. Lengths outside 0 to 200 mm, or half a pupil
 * distance outside 7.5 to 50 mm, throw OutOfRange.
 * Source: OpticalCourse free dispensing course, quiz answers; monocular form.
 */
export function monocularDecentration(a: number, dbl: number, monocularPd: number): number {
  const half = within('monocular pupil distance', monocularPd, { least: 7.5, most: 50 });
  return (within('a', a, LENGTH) + within('dbl', dbl, LENGTH)) / 2 - half;
}

/**
 * Returns the smallest uncut lens (diameter, millimetres) that covers a shape of effective diameter `ed` whose centre
 * stands `decentration` millimetres off the middle of the lens, in or out alike. The theoretical size has no `margin`; shops add
 * 2 mm for chipped edges. Lengths outside 0 to 200 mm throw OutOfRange.
 * Source: OpticalCourse free dispensing course, quiz answers; the margin from memory of Brooks & Borish.
 */
export function minimumBlank(ed: number, decentration: number, margin = 0): number {
  const off = Math.abs(within('decentration', decentration, { least: -200, most: 200 }));
  return within('effective diameter', ed, LENGTH) + 2 * off + within('margin', margin, LENGTH);
}

/**
 * Returns how far the top of a segment lies below the horizontal boxed centre line (millimetres, negative when it lies
 * above), from its height above the lower tangent and the boxed height `b`. Lengths outside 0 to 200 mm throw OutOfRange.
 * Source: OpticalCourse free dispensing course, quiz answers.
 */
export function segmentDrop(height: number, b: number): number {
  return within('b', b, LENGTH) / 2 - within('height', height, LENGTH);
}

/**
 * Returns how far each segment stands inwards of the distance centre (millimetres), from the binocular distance and near
 * pupil distances. Values outside 15 to 100 mm throw OutOfRange.
 * Source: from memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function segmentInset(distancePd: number, nearPd: number): number {
  const distance = within('pupil distance', distancePd, PUPIL_DISTANCE);
  return (distance - within('near pupil distance', nearPd, PUPIL_DISTANCE)) / 2;
}

/**
 * Returns how far each segment stands inwards of the boxed centre (millimetres), from the boxed lens width `a`, the
 * distance between lenses `dbl` and the binocular near pupil distance. Values outside their range throw OutOfRange.
 * Source: from memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function totalInset(a: number, dbl: number, nearPd: number): number {
  return decentration(a, dbl, nearPd);
}

/**
 * Returns the inset of one near centre (millimetres) by the three-quarter rule: 0.75 mm for each dioptre of working
 * distance. The distance is in millimetres from the lens, 100 to 2000; others throw OutOfRange.
 * Source: Gerstman's rule, from memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function insetByThreeQuarterRule(workingDistance: number): number {
  return (0.75 * 1000) / within('working distance', workingDistance, { least: 100, most: 2000 });
}

/**
 * Returns the inset of one near centre (millimetres) at which the converging eye meets the lens. `monocularPd` and
 * `workingDistance` (lens to near point, 100 to 2000) in millimetres, `horizontalPower` of the lens in dioptres within 30 of
 * zero, `toRotationCentre` from the lens to the eye's centre of rotation (15 to 40 mm, usually 27).
 * Values outside their range throw OutOfRange.
 * Source: Ellerbrock, from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function insetByConvergence(
  monocularPd: number,
  workingDistance: number,
  horizontalPower = 0,
  toRotationCentre = 27,
): number {
  const half = within('monocular pupil distance', monocularPd, { least: 7.5, most: 50 });
  const away = within('working distance', workingDistance, { least: 100, most: 2000 });
  const power = within('horizontal power', horizontalPower, { least: -30, most: 30 });
  const rotation = within('distance to the centre of rotation', toRotationCentre, { least: 15, most: 40 });
  return half / (1 + away * (1 / rotation - power / 1000));
}

/**
 * Returns the height at which to order the optical centre (millimetres above the lower tangent) when the pupil stands at
 * `pupilHeight` and the frame tilts by `tilt` degrees: 1 mm lower for every 2 degrees of pantoscopic tilt.
 * A height outside 0 to 200 mm or a tilt beyond 45 degrees throws OutOfRange.
 * Source: Atchison & Tame 1993, doi 10.1111/j.1475-1313.1993.tb00502.x.
 */
export function opticalCentreHeightForTilt(pupilHeight: number, tilt: number): number {
  return within('height', pupilHeight, LENGTH) - within('tilt', tilt, TILT) / 2;
}

/**
 * Returns how far below the pupil (millimetres) the optical centre belongs so that the optical axis passes the eye's centre
 * of rotation, `toRotationCentre` behind the lens (15 to 40 mm, usually 27), at a pantoscopic tilt in degrees.
 * Values outside their range, or a tilt beyond 45 degrees, throw OutOfRange.
 * Source: geometry behind the rule of Atchison & Tame 1993.
 */
export function opticalCentreDropForTilt(tilt: number, toRotationCentre = 27): number {
  const rotation = within('distance to the centre of rotation', toRotationCentre, { least: 15, most: 40 });
  return rotation * Math.tan(radians(within('tilt', tilt, TILT)));
}
