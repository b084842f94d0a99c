import { POWER, within } from './range';

/**
 * Returns a suitable front base curve (dioptres) for a spherical equivalent (dioptres, within 40): plus lenses the
 * equivalent plus 6, minus lenses half of it plus 6. Other values throw OutOfRange.
 * Source: Vogel's rule; open exam study guide, optics II, thickness and effective power.
 */
export function baseCurveByVogel(sphericalEquivalent: number): number {
  const se = within('spherical equivalent', sphericalEquivalent, POWER);
  return se > 0 ? se + 6 : se / 2 + 6;
}

/**
 * Returns a suitable front base curve (dioptres) for digitally made lenses from the spherical equivalent (within 40) and the
 * add (0 to 10), dioptres: plus lenses the equivalent plus half the add plus 3.50, minus lenses half of both plus 4.25.
 * Plano counts as minus. Other values throw OutOfRange.
 * Source: B. Boddy, base-curve paper, 2013.
 */
export function baseCurveByBoddy(sphericalEquivalent: number, add = 0): number {
  const se = within('spherical equivalent', sphericalEquivalent, POWER);
  const near = within('add', add, { least: 0, most: 10 });
  return se > 0 ? 3.5 + near / 2 + se : 4.25 + (se + near) / 2;
}

/**
 * Returns the curve variation factor of an index, no unit: how much flatter, and about how much thinner, a lens comes than in a
 * material of `reference` index. An index outside 1 to 3 throws OutOfRange.
 * Source: M. Jalie, physical data of lens materials.
 */
export function curveVariationFactor(index: number, reference = 1.523): number {
  const range = { above: 1, most: 3 };
  return (within('reference index', reference, range) - 1) / (within('index', index, range) - 1);
}
