import { within } from './range';

/**
 * Returns the transverse chromatic aberration (prism dioptres, 0 or above) of a place on a lens from the prism it gives there
 * (prism dioptres, within 100) and the Abbe number of the material (10 to 100). About 0.1 is where people notice it.
 * Values outside their range throw OutOfRange.
 * Source: from memory of Jalie, Principles of Ophthalmic Lenses.
 */
export function transverseChromaticAberration(prism: number, abbe: number): number {
  return (
    Math.abs(within('prism', prism, { least: -100, most: 100 })) / within('Abbe number', abbe, { least: 10, most: 100 })
  );
}
