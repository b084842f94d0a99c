import { degrees, radians } from './angles';
import { type Power, principalMeridians } from './power';
import { toMatrix } from './power-matrix';
import type { Displacement, PrismVector } from './prism';
import { DISPLACEMENT, OutOfRange, PRISM, within } from './range';

/** Prism below this amount across a plano meridian (prism dioptres) is rounding noise. */
const NO_PRISM = 1e-9;
/** A principal power below this amount (dioptres) is plano and a rounding error. */
const PLANO = 1e-9;

/**
 * Returns where the optical centre must stand, millimetres from the place looked through (examiner's right and up
 * positive), for a lens to give `prism` there. Where a principal meridian is plano, only prism along the powered meridian
 * can be had, and the centre is moved along that meridian; any other prism throws OutOfRange, as does a
 * decentration beyond 100 mm, a lens outside the range of checkPower and a prism beyond 100 prism dioptres.
 * Source: Jalie, The Indian Optician Nov–Dec 2024, pp. 139–140 (the whole difference over S(S + C)).
 */
export function decentrationForPrism(power: Power, prism: PrismVector): Displacement {
  const p = { right: within('horizontal prism', prism.right, PRISM), up: within('vertical prism', prism.up, PRISM) };
  let right = 0;
  let up = 0;
  for (const { meridian, power: along } of principalMeridians(power)) {
    const x = Math.cos(radians(meridian));
    const y = Math.sin(radians(meridian));
    const wanted = p.right * x + p.up * y;
    if (Math.abs(along) < PLANO) {
      if (Math.abs(wanted) > NO_PRISM)
        throw new OutOfRange('prism along the plano meridian', wanted, { least: 0, most: 0 });
      continue;
    }
    right += (10 * wanted * x) / along;
    up += (10 * wanted * y) / along;
  }
  return { right: within('decentration', right, DISPLACEMENT), up: within('decentration', up, DISPLACEMENT) };
}

/**
 * Returns the band of a lens in which vertical prism stays within `limit` (above 0, prism dioptres): its half-width in
 * millimetres across the band, and the angle of the band to the horizontal in degrees, counter-clockwise positive.
 * A lens that gives no vertical prism anywhere has no band: OutOfRange, as for other values outside their range.
 * Source: Jalie, The Indian Optician Sept–Oct 2022, p. 112.
 */
export function verticalPrismZone(
  power: Power,
  limit: number,
): { readonly halfWidth: number; readonly inclination: number } {
  const most = within('vertical prism', limit, { above: 0, most: 100 });
  const { xy, yy } = toMatrix(power);
  const steepest = within('vertical prism per centimetre', Math.hypot(xy, yy), { above: 1e-9 });
  const angle = degrees(Math.atan2(-xy, yy)) + 0;
  const inclination = angle > 90 ? angle - 180 : angle < -90 ? angle + 180 : angle;
  return { halfWidth: (10 * most) / steepest, inclination };
}
