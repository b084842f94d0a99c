import { degrees, radians } from './angles';
import { normalAxis, type Power } from './power';
import { POWER, within } from './range';

/** Below this power (dioptres) a resulting cylinder is rounding noise. */
const NO_CYLINDER = 1e-12;

/**
 * Returns the lens that two thin cylinders in contact make (dioptres, plus cylinder form), given the power (within 40) and
 * axis (degrees) of each. Values outside their range throw OutOfRange.
 * Source: Jalie, The Indian Optician May–June 2022, p. 105 (Thompson's formula, with the whole sum halved).
 */
export function crossedCylinders(first: number, firstAxis: number, second: number, secondAxis: number): Power {
  const f1 = within('first cylinder', first, POWER);
  const f2 = within('second cylinder', second, POWER);
  const doubled = 2 * radians(normalAxis(secondAxis) - normalAxis(firstAxis));
  const cylinder = Math.hypot(f1 + f2 * Math.cos(doubled), f2 * Math.sin(doubled));
  if (cylinder < NO_CYLINDER) return { sphere: (f1 + f2) / 2, cylinder: 0, axis: 180 };
  const turned = degrees(Math.atan2(f2 * Math.sin(doubled), f1 + f2 * Math.cos(doubled))) / 2;
  return { sphere: (f1 + f2 - cylinder) / 2, cylinder, axis: normalAxis(firstAxis + turned) };
}

/**
 * Returns the percentage of a cylinder that acts in a meridian `fromAxis` degrees (0 to 90) from its axis. Other angles throw
 * OutOfRange.
 * Source: open course page, oblique cylinder percentages.
 */
export function percentageOfCylinder(fromAxis: number): number {
  return 100 * Math.sin(radians(within('angle from the axis', fromAxis, { least: 0, most: 90 }))) ** 2;
}
