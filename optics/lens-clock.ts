import { INDEX, SURFACE_POWER, within } from './range';

/** Index for which lens measures are usually divided; some are divided for 1.523. */
const CLOCK_INDEX = 1.53;

/**
 * Returns the true power of a surface (dioptres) from what a lens measure shows, for a material of `index` and a dial
 * divided for `clockIndex`. A dial beyond 60 D or an index outside 1 to 3 throws OutOfRange.
 * Source: follows from surface power (n - 1)/r, National Federation of Opticianry Schools, OPT11, answers 06a.
 */
export function surfacePower(dial: number, index: number, clockIndex = CLOCK_INDEX): number {
  return (within('dial reading', dial, SURFACE_POWER) * curvatureFactor(index)) / curvatureFactor(clockIndex);
}

/**
 * Returns what a lens measure divided for `clockIndex` shows (dioptres) on a surface of true power `power` (dioptres) in a
 * material of `index`. A power beyond 60 D or an index outside 1 to 3 throws OutOfRange.
 * Source: follows from surface power (n - 1)/r, National Federation of Opticianry Schools, OPT11, answers 06a.
 */
export function dialReading(power: number, index: number, clockIndex = CLOCK_INDEX): number {
  return (within('surface power', power, SURFACE_POWER) * curvatureFactor(clockIndex)) / curvatureFactor(index);
}

/**
 * Returns the add (dioptres) of a one-piece segment from the dial on the distance portion and on the segment. A fused
 * segment has no change of curve to feel, so this says nothing about it. A dial beyond 60 D or an index outside 1 to 3
 * throws OutOfRange.
 * Source: common practice; the difference of two surface powers on the side that carries the segment.
 */
export function addByClock(dialDistance: number, dialSegment: number, index: number, clockIndex = CLOCK_INDEX): number {
  return surfacePower(dialSegment, index, clockIndex) - surfacePower(dialDistance, index, clockIndex);
}

/**
 * Returns by how much the dial moves (dioptres) when its middle pin stands on a slab-off line of `prism` prism dioptres.
 * `halfSpan` is half the distance of the outer pins, 1 to 30 mm. Other values throw OutOfRange.
 * Source: derived from the sag of two planes meeting under the middle pin; at 10 mm and index 1.53 it is the classroom
 * rule of 1 D for each prism dioptre (from memory of Brooks & Borish).
 */
export function dialShiftOnSlabLine(prism: number, index: number, halfSpan: number, clockIndex = CLOCK_INDEX): number {
  const ridge = within('prism', prism, { least: -20, most: 20 }) / curvatureFactor(index) / 100;
  return (ridge * curvatureFactor(clockIndex) * 1000) / within('half span', halfSpan, { least: 1, most: 30 });
}

function curvatureFactor(index: number): number {
  return within('index', index, INDEX) - 1;
}
