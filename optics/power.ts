import { radians } from './angles';
import { ANGLE, OutOfRange, POWER, within } from './range';

/**
 * A sphero-cylinder. `sphere` and `cylinder` in dioptres, `axis` in degrees counter-clockwise as the examiner faces
 * the wearer, above 0 and up to 180 (horizontal is 180, never 0). A sphere has cylinder 0 and, by convention, axis 180.
 */
export interface Power {
  readonly sphere: number;
  readonly cylinder: number;
  readonly axis: number;
}

/** The power, in dioptres, along a meridian given in degrees, above 0 and up to 180. */
export interface MeridianPower {
  readonly meridian: number;
  readonly power: number;
}

/** The difference of two principal powers, dioptres. */
const CYLINDER = { least: -80, most: 80 };
const AXIS = { above: 0, most: 180 };

/** Angles (degrees) closer than this name the same line. */
const SAME_LINE = 1e-9;

/**
 * Returns the same lens, after checking it. Both principal powers must lie within 40 D of zero and the axis above 0
 * and up to 180; otherwise OutOfRange is thrown.
 * Source: the range is ours.
 */
export function checkPower(power: Power): Power {
  within('sphere', settled(power.sphere), POWER);
  within('cylinder', power.cylinder, CYLINDER);
  within('sphere + cylinder', settled(power.sphere + power.cylinder), POWER);
  within('axis', power.axis, AXIS);
  return power;
}

/**
 * Returns the axis or meridian, above 0 and up to 180 degrees, that any angle in degrees names. Up to a billionth of a degree
 * above 0 that is 180.
 * Angles beyond two turns or not finite throw OutOfRange.
 * Source: axis notation of ISO 8429 (TABO), 180 preferred to 0.
 */
export function normalAxis(degrees: number): number {
  const rest = within('axis', degrees, ANGLE) % 180;
  const turned = rest < 0 ? rest + 180 : rest;
  // A computed axis a rounding error above 0 is horizontal as well, or it would later be rounded to 0.
  return turned < SAME_LINE ? 180 : turned;
}

/**
 * Returns the same lens in the other cylinder form: sphere + cylinder, minus cylinder, axis turned by 90 degrees.
 * A sphere stays as it is, with axis 180. A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 08c.
 */
export function transpose(power: Power): Power {
  checkPower(power);
  if (power.cylinder === 0) return spherical(power.sphere);
  return {
    sphere: power.sphere + power.cylinder,
    cylinder: -power.cylinder,
    axis: power.axis <= 90 ? power.axis + 90 : power.axis - 90,
  };
}

/**
 * Returns the lens with its cylinder minus or zero, never negative zero.
 * A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 08.
 */
export function minusForm(power: Power): Power {
  return power.cylinder < 0 ? asWritten(power) : transpose(power);
}

/**
 * Returns the lens with its cylinder plus or zero, never negative zero.
 * A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 08.
 */
export function plusForm(power: Power): Power {
  return power.cylinder > 0 ? asWritten(power) : transpose(power);
}

/**
 * Returns both principal meridians (degrees, dioptres): first the axis meridian, which carries the sphere, then the one
 * at right angles to it, which carries sphere + cylinder. A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 08b (optical cross).
 */
export function principalMeridians(power: Power): readonly [MeridianPower, MeridianPower] {
  checkPower(power);
  const axis = power.cylinder === 0 ? 180 : power.axis;
  return [
    { meridian: axis, power: power.sphere + 0 },
    { meridian: axis <= 90 ? axis + 90 : axis - 90, power: power.sphere + power.cylinder + 0 },
  ];
}

/**
 * Returns the lens, in minus form, whose power along two meridians at right angles is given (degrees, dioptres).
 * The order of the two does not matter. Meridians that are not 90 degrees apart, or powers beyond 40 D, throw OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 08b (optical cross).
 */
export function fromMeridians(first: MeridianPower, second: MeridianPower): Power {
  const apart = axisDistance(first.meridian, second.meridian);
  if (Math.abs(apart - 90) > SAME_LINE) throw new OutOfRange('angle between meridians', apart, { least: 90, most: 90 });
  const [high, low] = first.power >= second.power ? [first, second] : [second, first];
  const axis = normalAxis(high.meridian);
  return asWritten({ sphere: high.power, cylinder: low.power - high.power, axis });
}

/**
 * Returns the spherical equivalent in dioptres, the mean of both principal powers.
 * A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, answers 09b.
 */
export function sphericalEquivalent(power: Power): number {
  checkPower(power);
  return power.sphere + power.cylinder / 2 + 0;
}

/**
 * Returns the power in dioptres along a meridian (degrees, any angle within two turns). Off the principal meridians it
 * is the curvature along that line, good for thickness, but it is not the whole prismatic effect (see prism).
 * A lens outside the range of checkPower throws OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 10a.
 */
export function powerAt(power: Power, meridian: number): number {
  checkPower(power);
  const sine = Math.sin(radians(normalAxis(meridian) - power.axis));
  return power.sphere + power.cylinder * sine ** 2 + 0;
}

/**
 * Returns the near power: sphere + add, cylinder and axis unchanged. Powers and add in dioptres.
 * A lens outside the range of checkPower or an add beyond 40 D throws OutOfRange.
 * Source: common practice, no source.
 */
export function nearPower(power: Power, add: number): Power {
  checkPower(power);
  return { ...asWritten(power), sphere: power.sphere + within('add', add, POWER) };
}

/**
 * Returns the angle between two axes or meridians, 0 to 90 degrees, the short way round the half circle.
 * Angles beyond two turns or not finite throw OutOfRange.
 * Source: follows from axis 180 and axis 0 being the same line.
 */
export function axisDistance(first: number, second: number): number {
  const apart = Math.abs(normalAxis(first) - normalAxis(second));
  return Math.min(apart, 180 - apart);
}

/**
 * Returns the lens that comes of changing each principal power (dioptres) by the same rule, in the form and at the axis of
 * the given one. A lens outside the range of checkPower throws OutOfRange, as does whatever the rule refuses.
 * Source: common practice, no source: principal meridians are worked apart and put together again.
 */
export function byMeridians(power: Power, change: (meridianPower: number) => number): Power {
  const [along, across] = principalMeridians(power);
  const sphere = change(along.power) + 0;
  const cylinder = change(across.power) - sphere;
  return cylinder === 0 ? spherical(sphere) : { sphere, cylinder, axis: power.axis };
}

/** A computed power at the very end of the range may exceed it by a rounding error, which is no reason to refuse it. */
function settled(power: number): number {
  return Math.round(power * 1e9) / 1e9;
}

/** The very same lens wherever nothing about it has to be put right. */
function asWritten(power: Power): Power {
  checkPower(power);
  if (power.cylinder === 0) return spherical(power.sphere);
  return Object.is(power.sphere, -0) ? { ...power, sphere: 0 } : power;
}

function spherical(sphere: number): Power {
  return { sphere: sphere + 0, cylinder: 0, axis: 180 };
}
