import { byMeridians, type Power } from './power';
import { POWER, within } from './range';
import { vergenceAfter } from './vergence';

/** Distances from the back of a lens to the cornea, millimetres. At 0 the lens is worn on the eye. */
const VERTEX = { least: 0, most: 50 };
/** Distances of a near object, millimetres. */
const NEAR = { least: 60, most: 10000 };

/**
 * Returns the power to order (dioptres, form and axis as given) when a lens was tested at one vertex distance and is worn at
 * another (millimetres, 0 to 50; 0 is on the cornea), so that a distant object is seen as in the test. A minus lens
 * worn farther away comes out stronger, a plus lens weaker. Values outside their range, or a lens so strong that its focus
 * lies before the new place, throw OutOfRange.
 * Source: Contact Lens Society of America, EyeWitness, Spring 2011, p. 27.
 */
export function powerForVertex(power: Power, tested: number, worn: number): Power {
  const nearer = within('tested vertex distance', tested, VERTEX) - within('worn vertex distance', worn, VERTEX);
  return byMeridians(power, (meridian) => vergenceAfter(meridian, nearer));
}

/**
 * Returns the effective power (dioptres, form and axis as given) that the same lens has at its old place after it was moved
 * away from the eye by `away` millimetres (negative when moved closer, within 50). This goes the opposite way to
 * powerForVertex. Values outside their range throw OutOfRange.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function effectivePower(power: Power, away: number): Power {
  const moved = within('distance moved', away, { least: -50, most: 50 });
  return byMeridians(power, (meridian) => vergenceAfter(meridian, moved));
}

/**
 * Returns the near power to order (dioptres, form and axis as given) when a reading lens was tested at one vertex distance
 * and is worn at another (millimetres, 0 to 50), for an object `objectDistance` millimetres before the cornea (60 to
 * 10000), so that the light leaves the cornea as in the test. Values outside their range throw OutOfRange.
 * Source: derived by vergences from the object to the cornea; method from memory of Jalie, Principles of Ophthalmic Lenses.
 */
export function nearPowerForVertex(power: Power, tested: number, worn: number, objectDistance: number): Power {
  const away = within('object distance', objectDistance, NEAR);
  const nearer = within('tested vertex distance', tested, VERTEX) - within('worn vertex distance', worn, VERTEX);
  return byMeridians(power, (meridian) => {
    const leaving = meridian - 1000 / (away - tested);
    return vergenceAfter(leaving, nearer) + 1000 / (away - worn);
  });
}

/**
 * Returns by how much the power to order changes (dioptres, positive towards plus) by the square rule, when a lens of
 * `power` dioptres moves `nearer` millimetres towards the eye (negative when away, within 50). Good for small changes only; use
 * powerForVertex to order. Values outside their range throw OutOfRange.
 * Source: Contact Lens Society of America, EyeWitness, Spring 2011, p. 27 (its rule of a hundredth is 10 mm).
 */
export function approximateVertexChange(power: number, nearer: number): number {
  return within('power', power, POWER) ** 2 * (within('distance moved', nearer, { least: -50, most: 50 }) / 1000) + 0;
}

/**
 * Returns the vergence (dioptres) of light from far away as it leaves the second of two thin lenses `separation` millimetres
 * apart (0 to 1000), given both powers in dioptres. A focus between the lenses, or values outside their range, throw
 * OutOfRange.
 * Source: mrcophth.com, optics answers II A.
 */
export function separatedLenses(first: number, second: number, separation: number): number {
  const apart = within('separation', separation, { least: 0, most: 1000 });
  return vergenceAfter(within('first power', first, POWER), apart) + within('second power', second, POWER);
}
