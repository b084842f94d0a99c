import { INDEX, OutOfRange, SURFACE_POWER, within } from './range';

/** Distances from the axis, millimetres. */
const HALF_APERTURE = { least: 0, most: 200 };

/**
 * Returns the power of a surface (dioptres) from its radius (millimetres, positive convex, negative concave, 1 mm to
 * 1 km) and the index of the lens. Another radius or an index outside 1 to 3 throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 06a.
 */
export function surfacePowerOfRadius(radius: number, index: number): number {
  return (1000 * (within('index', index, INDEX) - 1)) / checkRadius(radius);
}

/**
 * Returns the radius of a surface (millimetres, positive convex, negative concave) from its power (dioptres, within 60) and
 * the index of the lens. A plano surface has no radius and throws OutOfRange, as do values outside their range.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 06.
 */
export function radiusOfSurface(power: number, index: number): number {
  return checkRadius(1 / curvature(power, index));
}

/**
 * Returns the exact sag (millimetres, with the sign of the radius) of a sphere at `halfAperture` millimetres (0 to 200) from
 * its axis. A half aperture beyond the radius throws OutOfRange.
 * Source: The Indian Optician, May–June 2023, p. 112.
 */
export function sag(radius: number, halfAperture: number): number {
  return sagOfCurvature(1 / checkRadius(radius), halfAperture);
}

/**
 * Returns the exact sag (millimetres, positive for a convex surface, 0 for a plano one) of a spherical surface of a given
 * power (dioptres) and index at `halfAperture` millimetres from its axis. A curve too steep to reach that far throws OutOfRange.
 * Source: The Indian Optician, May–June 2023, p. 112.
 */
export function sagOfSurface(power: number, index: number, halfAperture: number): number {
  return sagOfCurvature(curvature(power, index), halfAperture);
}

/**
 * Returns the approximate sag (millimetres) of a surface of a given power (dioptres) and index at `halfAperture` millimetres
 * from its axis. It falls short on steep curves. Values outside their range throw OutOfRange.
 * Source: open exam study guide, optics II, thickness and effective power.
 */
export function approximateSag(power: number, index: number, halfAperture: number): number {
  return (curvature(power, index) * within('half aperture', halfAperture, HALF_APERTURE) ** 2) / 2 + 0;
}

/**
 * Returns the radius (millimetres, with the sign of the sag) of a sphere from its sag and half aperture (millimetres, the sag no
 * larger than the half aperture). A flat surface has no radius and throws OutOfRange, as do other values.
 * Source: The Indian Optician, May–June 2023, p. 112; the sag formula solved for the radius.
 */
export function radiusFromSag(sag: number, halfAperture: number): number {
  const y = within('half aperture', halfAperture, { above: 0, most: 200 });
  const s = within('sag', sag, { least: -y, most: y });
  return checkRadius((y * y + s * s) / (2 * s));
}

/**
 * Returns the curvature (per millimetre, positive convex) of a surface of a given power (dioptres, within 60) and index.
 * Values outside their range throw OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 06a.
 */
export function curvature(power: number, index: number): number {
  return within('surface power', power, SURFACE_POWER) / (1000 * (within('index', index, INDEX) - 1));
}

/**
 * Returns the exact sag (millimetres) of a curvature (per millimetre, within 1, 0 for flat) at `halfAperture` millimetres (0 to 200)
 * from the axis. A curve too steep to reach that far throws OutOfRange. This form keeps its digits on flat curves.
 * Source: The Indian Optician, May–June 2023, p. 112, rewritten for curvatures.
 */
export function sagOfCurvature(curvature: number, halfAperture: number): number {
  const y = within('half aperture', halfAperture, HALF_APERTURE);
  const c = within('curvature', curvature, { least: -1, most: 1 });
  const rest = 1 - (c * y) ** 2;
  if (rest < 0) throw new OutOfRange('half aperture', y, { least: 0, most: Math.abs(1 / c) });
  return (c * y * y) / (1 + Math.sqrt(rest)) + 0;
}

/** Radii of curvature, millimetres, of either sign. Flat surfaces have none. */
function checkRadius(radius: number): number {
  return within('radius', radius, radius < 0 ? { least: -1e6, most: -1 } : { least: 1, most: 1e6 });
}
