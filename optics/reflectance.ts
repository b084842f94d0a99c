import { within } from './range';

/**
 * Returns the share of light (0 to 1) that one uncoated surface in air throws back at right angles. An index outside 1 to 3
 * throws OutOfRange; at 1 nothing is thrown back.
 * Source: Fresnel's equation at normal incidence, from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function reflectance(index: number): number {
  const n = within('index', index, { least: 1, most: 3 });
  return ((n - 1) / (n + 1)) ** 2;
}
