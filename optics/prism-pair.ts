import { type Power, powerAt } from './power';
import type { Eye, PrismVector } from './prism';
import { DISPLACEMENT, PRISM, within } from './range';

/**
 * Returns what both lenses do together, prism dioptres: `horizontal` positive for base in, counted over both eyes, and
 * `vertical` positive for more base up before the right eye. Parts beyond 100 prism dioptres throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 A (same base names add horizontally, unlike vertically).
 */
export function imbalance(
  right: PrismVector,
  left: PrismVector,
): { readonly horizontal: number; readonly vertical: number } {
  const part = (of: 'right' | 'up') => within('prism', right[of], PRISM) - within('prism', left[of], PRISM);
  return { horizontal: part('right'), vertical: part('up') };
}

/**
 * Returns the prism before each eye when a prism written for one eye is shared: `share` (0 to 1) stays, the rest goes to
 * the other lens, horizontally with the same base name, vertically with the opposite one.
 * Parts beyond 100 prism dioptres or another share throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 A.
 */
export function splitPrism(prism: PrismVector, eye: Eye, share = 0.5): Readonly<Record<Eye, PrismVector>> {
  const kept = within('share', share, { least: 0, most: 1 });
  const right = within('horizontal prism', prism.right, PRISM);
  const up = within('vertical prism', prism.up, PRISM);
  const own = { right: right * kept + 0, up: up * kept + 0 };
  const other = { right: right * (kept - 1) + 0, up: up * (kept - 1) + 0 };
  return eye === 'R' ? { R: own, L: other } : { R: other, L: own };
}

/**
 * Returns the vertical imbalance, prism dioptres, when both eyes look `drop` millimetres below the optical centres:
 * positive for more base up before the right eye. Equal adds in equal segments change nothing.
 * A lens outside the range of checkPower or a drop beyond 100 mm throws OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 09 D.
 */
export function verticalImbalanceAtReading(right: Power, left: Power, drop: number): number {
  return (within('drop', drop, DISPLACEMENT) * (powerAt(right, 90) - powerAt(left, 90))) / 10 + 0;
}

/**
 * Returns which lens takes the slab-off for a vertical imbalance (prism dioptres, positive for more base up before the
 * right eye): base up of `amount` on the most minus or least plus lens (`slab`), or else base down of the same amount on the
 * other one (`reverse`). Without imbalance there is nothing to grind and the answer is undefined. An imbalance beyond
 * 100 prism dioptres throws OutOfRange.
 * Source: opticaltraining.com continuing education, ABO, lens materials and coatings, page 16.
 */
export function slabOff(
  verticalImbalance: number,
): { readonly slab: Eye; readonly reverse: Eye; readonly amount: number } | undefined {
  const amount = within('vertical imbalance', verticalImbalance, PRISM);
  if (amount === 0) return undefined;
  return amount > 0 ? { slab: 'L', reverse: 'R', amount } : { slab: 'R', reverse: 'L', amount: -amount };
}
