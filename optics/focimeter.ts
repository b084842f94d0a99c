import { byMeridians, minusForm, normalAxis, type Power } from './power';
import { POWER, SURFACE_POWER, THICKNESS, within } from './range';
import { backSurfaceFor, frontVertexPower } from './thick-lens';
import { vergenceAfter } from './vergence';

/** What a manual focimeter shows: drum with the thin (sphere) and the wide (cylinder) lines sharp, dioptres, and axis wheel. */
export interface DrumReading {
  readonly thin: number;
  readonly wide: number;
  readonly wheel: number;
}

/** The surface of the lens that stands on the stop. */
export type SurfaceOnStop = 'front' | 'back';

/** The parts of a lens that decide how its vertex powers differ: spherical front surface, dioptres; millimetres; index. */
export interface LensBody {
  readonly front: number;
  readonly thickness: number;
  readonly index: number;
}

/**
 * Returns the lens (dioptres, cylinder as read) from the two drum positions and the axis wheel (degrees): the first, thin lines
 * give the sphere, the second, wide lines less the first the cylinder. Drum positions beyond 40 D throw OutOfRange.
 * Source: minus-cylinder technique, from memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function powerFromDrum(first: number, second: number, wheel: number): Power {
  const sphere = within('drum position of the thin lines', first, POWER);
  const cylinder = within('drum position of the wide lines', second, POWER) - sphere;
  return { sphere, cylinder, axis: cylinder === 0 ? 180 : normalAxis(wheel) };
}

/**
 * Returns the add (dioptres) from two drum positions of the same set of lines, in the distance portion and in the segment. A
 * constant zero error drops out. Drum positions beyond 40 D throw OutOfRange.
 * Source: from memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function addByDrum(distance: number, segment: number): number {
  return (
    within('drum position in the segment', segment, POWER) - within('drum position in the distance', distance, POWER)
  );
}

/**
 * Returns an absolute drum position (dioptres) with the zero error of the instrument taken off. `zero` is what the drum shows with
 * nothing on the stop (dioptres, within 5). Never use it on an add. Values outside their range throw OutOfRange.
 * Source: common practice, no source.
 */
export function correctedForZero(drum: number, zero: number): number {
  return within('drum position', drum, POWER) - within('zero error', zero, { least: -5, most: 5 });
}

/**
 * Returns the drum positions and wheel to expect from a lens of back vertex `power`, minus-cylinder technique. With the front
 * on the stop the front vertex powers show, and the axis stands mirrored, since the lens is turned over. The front surface
 * is taken as spherical. Values outside their range throw OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 11a (which vertex power shows on which side).
 */
export function expectedDrum(power: Power, body: LensBody, onStop: SurfaceOnStop): DrumReading {
  const shown = minusForm(onStop === 'back' ? power : turnedOver(power, body));
  return { thin: shown.sphere, wide: shown.sphere + shown.cylinder, wheel: shown.axis };
}

/**
 * Returns by how much an add reads too high (dioptres) when the surface without the segment stands on the stop. `surface` is the power
 * (dioptres) of the surface that carries the segment, outside the segment. With that surface on the stop the error is 0.
 * Values outside their range throw OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 11a (difference of back vertex powers); the
 * rule that the add belongs to the segment's side from memory of Brooks & Borish.
 */
export function addErrorOnOtherSurface(surface: number, add: number, thickness: number, index: number): number {
  const outside = within('surface power', surface, SURFACE_POWER);
  const more = within('add', add, POWER);
  const glass = within('thickness', thickness, THICKNESS);
  return vergenceAfter(outside + more, glass, index) - vergenceAfter(outside, glass, index) - more;
}

/**
 * Returns how far the target of a focimeter moves from its zero (millimetres, positive towards the standard lens) for a lens of
 * `power` dioptres, with a standard lens of `standardLens` dioptres (5 to 60). Values outside their range throw OutOfRange.
 * Source: Schwiegerling, Field Guide to Visual and Ophthalmic Optics (displacement is power times focal length squared).
 */
export function targetDisplacement(power: number, standardLens: number): number {
  return (1000 * within('power', power, POWER)) / within('standard lens', standardLens, { least: 5, most: 60 }) ** 2;
}

/** One that is turned over left to right shows every meridian at 180 less its angle. */
function turnedOver(power: Power, body: LensBody): Power {
  const shown = byMeridians(power, (meridian) => {
    const back = backSurfaceFor(meridian, body.front, body.thickness, body.index);
    return frontVertexPower({ front: body.front, back, thickness: body.thickness, index: body.index });
  });
  return { ...shown, axis: normalAxis(180 - shown.axis) };
}
