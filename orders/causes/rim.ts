/** How far a lens can turn in its rim. */
import { misfitOfTurn } from '../../optics';
import { attempt } from '../attempt';
import { isLess } from '../exact';
import type { Frame } from '../model';

/** Millimetres that a bevel gives in its groove before the lens jumps out of it. Common practice, no source. */
const PLAY = 0.75;

/**
 * Whether a lens of this shape can have turned in its rim by an angle in degrees. A shape as high as it is wide turns
 * freely; one much lower than wide stands against the rim. True where A or B is not known, or no side of a lens.
 * Common practice, no source.
 */
export function canTurn({ a, b }: Frame, turn: number): boolean {
  const misfit = a && b && attempt(() => misfitOfTurn(a.value, b.value, turn));
  return misfit === null || !isLess(PLAY, misfit);
}
