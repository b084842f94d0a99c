import { degrees, radians } from './angles';
import { checkPower, normalAxis, type Power } from './power';
import { OutOfRange, POWER, within } from './range';

/**
 * A lens as a vector, all parts in dioptres: `m` the spherical equivalent, `j0` the cross-cylinder at 180 and 90
 * (positive for minus cylinders at 180), `j45` the one at 45 and 135.
 */
export interface PowerVector {
  readonly m: number;
  readonly j0: number;
  readonly j45: number;
}

/** The difference of two lenses may reach twice the power of one, so vectors have twice the range of a lens. */
const COMPONENT = { least: -80, most: 80 };

/** Below this length (dioptres) a cross-cylinder is rounding noise, and its axis would be noise as well. */
const NO_CYLINDER = 1e-12;

/**
 * Returns the power vector (dioptres) of a lens. A lens outside the range of checkPower throws OutOfRange.
 * Source: Thibos, Wheeler & Horner, Optom Vis Sci 1997;74:367–375.
 */
export function toVector(power: Power): PowerVector {
  checkPower(power);
  const doubled = 2 * radians(power.axis);
  return {
    m: power.sphere + power.cylinder / 2 + 0,
    j0: (-power.cylinder / 2) * Math.cos(doubled) + 0,
    j45: (-power.cylinder / 2) * Math.sin(doubled) + 0,
  };
}

/**
 * Returns the lens, in minus form, of a power vector (dioptres). Components beyond 80 D throw OutOfRange.
 * A cross-cylinder below 1e-12 D counts as none, giving a sphere with axis 180.
 * Source: Thibos, Wheeler & Horner, Optom Vis Sci 1997;74:367–375.
 */
export function fromVector(vector: PowerVector): Power {
  const m = within('m', vector.m, COMPONENT);
  const j0 = within('j0', vector.j0, COMPONENT);
  const j45 = within('j45', vector.j45, COMPONENT);
  const length = Math.hypot(j0, j45);
  if (length < NO_CYLINDER) return { sphere: m, cylinder: 0, axis: 180 };
  return { sphere: m + length, cylinder: -2 * length, axis: normalAxis(degrees(Math.atan2(j45, j0)) / 2) };
}

/**
 * Returns the lens, in minus form, that two thin lenses in contact make together.
 * A lens outside the range of checkPower throws OutOfRange; the sum itself may exceed it.
 * Source: Thibos, Wheeler & Horner, Optom Vis Sci 1997;74:367–375.
 */
export function sum(first: Power, second: Power): Power {
  return combined(first, second, 1);
}

/**
 * Returns the lens, in minus form, that added to `second` gives `first`, such as what was read minus what was ordered.
 * A lens outside the range of checkPower throws OutOfRange; the difference itself may exceed it.
 * Source: Thibos, Wheeler & Horner, Optom Vis Sci 1997;74:367–375.
 */
export function difference(first: Power, second: Power): Power {
  return combined(first, second, -1);
}

/**
 * Returns the blur strength in dioptres, the length of the power vector: zero or above, the same in either cylinder
 * form. A lens outside the range of checkPower throws OutOfRange.
 * Source: Thibos, Wheeler & Horner, Optom Vis Sci 1997;74:367–375.
 */
export function blurStrength(power: Power): number {
  const { m, j0, j45 } = toVector(power);
  return Math.hypot(m, j0, j45);
}

/**
 * Returns the mean of repeated readings, in minus form, taken as power vectors, so that axes 178 and 2 average to 180.
 * An empty list, or a lens outside the range of checkPower, throws OutOfRange.
 * Source: Thibos & Horner 2001 (power vectors average component by component).
 */
export function meanPower(powers: readonly Power[]): Power {
  if (powers.length === 0) throw new OutOfRange('number of powers', 0, { least: 1 });
  const vectors = powers.map(toVector);
  const mean = (part: keyof PowerVector) => vectors.reduce((total, vector) => total + vector[part], 0) / vectors.length;
  return fromVector({ m: mean('m'), j0: mean('j0'), j45: mean('j45') });
}

/**
 * Returns the lens still wanted, in minus form, when a cylinder (dioptres, either sign) that belongs at axis 180 is
 * worn `axisError` degrees
 * counter-clockwise of it, -90 to 90. It is a pure cross-cylinder; for a correct axis other than 180 add that
 * axis to the one returned. A cylinder beyond 40 D or a larger angle throws OutOfRange.
 * Source: IACLE Contact Lens Course, Module 3, Lecture 3.3, Appendix B.
 */
export function residualOfAxisError(cylinder: number, axisError: number): Power {
  within('cylinder', cylinder, POWER);
  const turned = within('axis error', axisError, { least: -90, most: 90 });
  const half = cylinder * Math.sin(radians(turned));
  if (half === 0) return { sphere: 0, cylinder: 0, axis: 180 };
  return { sphere: Math.abs(half), cylinder: -2 * Math.abs(half), axis: (half < 0 ? 135 : 45) + turned / 2 };
}

function combined(first: Power, second: Power, sign: 1 | -1): Power {
  const a = toVector(first);
  const b = toVector(second);
  return fromVector({ m: a.m + sign * b.m, j0: a.j0 + sign * b.j0, j45: a.j45 + sign * b.j45 });
}
