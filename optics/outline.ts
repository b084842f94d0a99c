import { degrees, radians } from './angles';
import type { Displacement } from './prism';
import { DISPLACEMENT, within } from './range';

/** Of a boxed lens, millimetres. */
const SIDE = { least: 5, most: 120 };

/**
 * The size of a lens shape, millimetres: boxed width `a`, boxed height `b`, effective diameter `ed`.
 *
 * The outline itself is not known from these three, so one is assumed: the box cut by the circle of the effective diameter
 * about its middle. Every shape of these measures lies inside it, so thickness of a minus edge and weight come out at their
 * largest. A round lens has all three alike.
 */
export interface BoxedShape {
  readonly a: number;
  readonly b: number;
  readonly ed: number;
}

/**
 * Returns the distance from the boxed centre to the assumed outline (millimetres) in a direction given in degrees
 * counter-clockwise from the examiner's right. Sides outside 5 to 120 mm, or an effective diameter below the longer side or above
 * the diagonal of the box, throw OutOfRange.
 * Source: the assumed outline is ours; boxed measures as in ISO 8624, from memory.
 */
export function outlineRadius(shape: BoxedShape, direction: number): number {
  const { a, b, ed } = checkShape(shape);
  const angle = radians(within('direction', direction, { least: -720, most: 720 }));
  const side = a / 2 / Math.abs(Math.cos(angle));
  const top = b / 2 / Math.abs(Math.sin(angle));
  return Math.min(side, top, ed / 2);
}

/**
 * Returns the directions (degrees, rising from 0 to 360, both included) at which the assumed outline turns from one side,
 * or from the circle, to the next, and those of the axes. Range as for outlineRadius.
 * Source: the assumed outline is ours.
 */
export function outlineCorners(shape: BoxedShape): readonly number[] {
  const { a, b, ed } = checkShape(shape);
  const sideEnds = degrees(Math.acos(a / ed));
  const topBegins = degrees(Math.asin(b / ed));
  const quarter = [sideEnds, Math.max(sideEnds, topBegins)];
  const mirrored = quarter.map((angle) => 180 - angle).reverse();
  const half = [0, ...quarter, 90, ...mirrored, 180];
  return [...half, ...half.slice(1).map((angle) => angle + 180)];
}

/**
 * Returns points on the assumed outline, millimetres from the optical centre, which itself stands `opticalCentre`
 * (millimetres, examiner's right and up positive) from the boxed centre: one every `step` degrees (0.1 to 90) and every corner.
 * Values outside their range throw OutOfRange.
 * Source: the assumed outline is ours.
 */
export function outlinePoints(shape: BoxedShape, opticalCentre: Displacement, step = 2): readonly Displacement[] {
  const x = within('optical centre to the right', opticalCentre.right, DISPLACEMENT);
  const y = within('optical centre upwards', opticalCentre.up, DISPLACEMENT);
  const count = Math.ceil(360 / within('step', step, { least: 0.1, most: 90 }));
  const even = Array.from({ length: count }, (_, position) => (360 * position) / count);
  return [...even, ...outlineCorners(shape)].map((direction) => {
    const radius = outlineRadius(shape, direction);
    const angle = radians(direction);
    return { right: radius * Math.cos(angle) - x, up: radius * Math.sin(angle) - y };
  });
}

function checkShape(shape: BoxedShape): BoxedShape {
  const a = within('a', shape.a, SIDE);
  const b = within('b', shape.b, SIDE);
  const ed = within('effective diameter', shape.ed, { least: Math.max(a, b), most: Math.hypot(a, b) });
  return { a, b, ed };
}

/**
 * Returns by how much a lens shape turned by an angle (degrees, within 360) stands into its rim at the worst place, millimetres: an
 * ellipse of boxed width `a` and height `b` whose radius differs from that of the rim by (a − b) / 2 × sin of the angle. A
 * round shape gives 0. Sides outside 5 to 120 mm or a
 * larger angle throw OutOfRange.
 * Source: geometry of an ellipse, to the first order in its flatness; ours.
 */
export function misfitOfTurn(a: number, b: number, turn: number): number {
  const flat = Math.abs(within('a', a, SIDE) - within('b', b, SIDE)) / 2;
  return flat * Math.abs(Math.sin(radians(within('turn', turn, { least: -360, most: 360 }))));
}
