import { within } from './range';

/**
 * Returns the vergence (dioptres) of light that has gone on by `distance` millimetres in a medium of `index`, from its
 * vergence (dioptres, reduced) before. Convergent light must not come to its focus on the way: distance × vergence / index
 * of 1 or above throws OutOfRange, as do a vergence beyond 200 D, a distance beyond 1 m and an index outside 1 to 3.
 * Source: Fannin & Grosvenor, Clinical Optics, from memory (downstream vergence).
 */
export function vergenceAfter(vergence: number, distance: number, index = 1): number {
  const v = within('vergence', vergence, { least: -200, most: 200 });
  const metres = within('distance', distance, { least: -1000, most: 1000 }) / 1000;
  const step = (metres / within('index', index, { least: 1, most: 3 })) * v;
  return v / (1 - within('distance × vergence', step, { below: 1 }));
}
