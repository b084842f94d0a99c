import { type Power, powerAt } from './power';
import type { Eye } from './prism';
import { DISPLACEMENT, POWER, PRISM, within } from './range';

/**
 * Returns the vertical prism (prism dioptres, base up positive) that a segment of power `add` (dioptres) gives at a point
 * `above` millimetres above the optical centre of the segment, negative below it.
 * An add beyond 40 D or a distance beyond 100 mm throws OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 09 E.
 */
export function segmentPrism(add: number, above: number): number {
  return (-within('add', add, POWER) * within('distance', above, DISPLACEMENT)) / 10 + 0;
}

/**
 * Returns the image jump at the top of a segment (prism dioptres, base up positive) from the add (dioptres) and the
 * distance of the segment's optical centre below its top (millimetres, negative when it lies above). Distance power and
 * distance optical centre have no part in it. An add beyond 40 D or a distance beyond 100 mm throws OutOfRange.
 * Source: Durham Technical Community College, OPH 141, lesson 13 B.
 */
export function imageJump(add: number, topToCentre: number): number {
  return segmentPrism(add, topToCentre);
}

/**
 * Returns the whole vertical prism of one multifocal lens (prism dioptres, base up positive) `readingDrop` millimetres
 * below the distance optical centre, when the segment's optical centre lies `segmentCentreDrop` millimetres below it.
 * Values outside their range throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 09 D.
 */
export function prismAtReading(power: Power, add: number, readingDrop: number, segmentCentreDrop: number): number {
  const drop = within('reading drop', readingDrop, DISPLACEMENT);
  const centre = within('drop of the segment centre', segmentCentreDrop, DISPLACEMENT);
  return (powerAt(power, 90) * drop) / 10 + segmentPrism(add, centre - drop);
}

/**
 * Returns the diameters (millimetres) of the two round segments that level the vertical prism at reading, starting from
 * equal ones of `diameter`. `right` and `left` are the vertical prisms at reading (prism dioptres, base up positive); the
 * lens with more base up takes the larger segment. An add (dioptres) of 0 or below, or a segment that would vanish or
 * exceed 100 mm, throws OutOfRange.
 * Source: Bhootra, Ophthalmic Lenses, p. 131.
 */
export function unequalRoundSegments(
  right: number,
  left: number,
  add: number,
  diameter: number,
): Readonly<Record<Eye, number>> {
  const difference = within('prism', right, PRISM) - within('prism', left, PRISM);
  const change = (10 * difference) / within('add', add, { above: 0, most: 40 });
  const size = { above: 0, most: 100 };
  within('diameter', diameter, size);
  return { R: within('diameter', diameter + change, size), L: within('diameter', diameter - change, size) };
}
