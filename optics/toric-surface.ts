import { minusForm, type Power, plusForm } from './power';
import { OutOfRange, SURFACE_POWER, within } from './range';
import { sagOfCurvature } from './surfaces';

/** A curve of a toric surface as the trade writes it, as a cylinder: power in dioptres and axis in degrees. */
export interface CylinderCurve {
  readonly power: number;
  readonly axis: number;
}

/**
 * Returns the three curves, in dioptres, that make a lens with a toric surface of base curve `base` (dioptres, within 60): the
 * spherical side, the base curve and the cross curve, the last two written as cylinders with their axes. A base curve of
 * 0 is taken as plus. A lens outside the range of checkPower, or another base curve, throws OutOfRange.
 * Source: mrcophth.com, mock viva 10, station 3.
 */
export function toricForm(
  power: Power,
  base: number,
): { readonly sphericalSide: number; readonly base: CylinderCurve; readonly cross: CylinderCurve } {
  const curve = within('base curve', base, SURFACE_POWER);
  const form = curve < 0 ? minusForm(power) : plusForm(power);
  return {
    sphericalSide: form.sphere - curve,
    base: { power: curve, axis: form.axis <= 90 ? form.axis + 90 : form.axis - 90 },
    cross: { power: curve + form.cylinder, axis: form.axis },
  };
}

/**
 * Returns the sag (millimetres) of a toric surface at a point `along` and `across` (millimetres) its principal meridians,
 * given the curvature (per millimetre) of each. The more curved meridian's circle is swept round the centre of the other
 * (tyre form), so both principal sections are exact circles; a barrel form differs only off those sections.
 * A point the surface does not reach throws OutOfRange.
 * Source: geometry of the torus.
 */
export function toricSag(alongCurvature: number, acrossCurvature: number, along: number, across: number): number {
  if (Math.abs(alongCurvature) < Math.abs(acrossCurvature)) {
    return toricSag(acrossCurvature, alongCurvature, across, along);
  }
  const circle = sagOfCurvature(alongCurvature, Math.abs(along));
  const sweep = within('curvature', acrossCurvature, { least: -1, most: 1 });
  const y = within('half aperture', Math.abs(across), { least: 0, most: 200 });
  const swept = 1 - sweep * circle;
  const rest = swept ** 2 - (sweep * y) ** 2;
  if (rest < 0) throw new OutOfRange('half aperture', y, { least: 0, most: swept / Math.abs(sweep) });
  return (2 * circle - sweep * circle ** 2 + sweep * y ** 2) / (1 + Math.sqrt(rest)) + 0;
}
