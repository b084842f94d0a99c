import { INDEX, SURFACE_POWER, THICKNESS, within } from './range';
import { vergenceAfter } from './vergence';

/**
 * One meridian of a thick lens in air: surface powers `front` and `back` in dioptres (a concave back is negative), centre
 * `thickness` in millimetres, refractive `index`.
 */
export interface ThickLens {
  readonly front: number;
  readonly back: number;
  readonly thickness: number;
  readonly index: number;
}

/**
 * Returns the back vertex power in dioptres, what a focimeter shows with the back surface on its stop. Surfaces beyond 60 D,
 * a thickness outside 0 to 50 mm, an index outside 1 to 3 or a focus inside the lens throw OutOfRange.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 11a.
 */
export function backVertexPower(lens: ThickLens): number {
  const { front, back, thickness, index } = checked(lens);
  return vergenceAfter(front, thickness, index) + back;
}

/**
 * Returns the front vertex power in dioptres, what a focimeter shows with the front surface on its stop; it is also the
 * power that hand neutralisation finds, with its sign turned. Range as for backVertexPower.
 * Source: National Federation of Opticianry Schools, OPT11, practice answers 11a.
 */
export function frontVertexPower(lens: ThickLens): number {
  const { front, back, thickness, index } = checked(lens);
  return vergenceAfter(back, thickness, index) + front;
}

/**
 * Returns the equivalent power in dioptres, that of the thin lens at the principal planes. Range as for backVertexPower.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function equivalentPower(lens: ThickLens): number {
  const { front, back, thickness, index } = checked(lens);
  return front + back - (thickness / 1000 / index) * front * back;
}

/**
 * Returns the nominal power in dioptres, the plain sum of both surfaces. Range as for backVertexPower.
 * Source: National Federation of Opticianry Schools, OPT11, answers 06b.
 */
export function nominalPower(lens: ThickLens): number {
  const { front, back } = checked(lens);
  return front + back;
}

/**
 * Returns the shape factor, back vertex power over equivalent power, no unit. `front` in dioptres, `thickness` in millimetres.
 * Range as for backVertexPower.
 * Source: from memory of Fannin & Grosvenor, Clinical Optics.
 */
export function shapeFactor(front: number, thickness: number, index: number): number {
  const lens = checked({ front, back: 0, thickness, index });
  const step = (lens.thickness / 1000 / lens.index) * lens.front;
  return 1 / (1 - within('thickness × front power / index', step, { below: 1 }));
}

/**
 * Returns the back surface power (dioptres) that gives a wanted back vertex power (dioptres, within 60) behind a given front
 * surface, thickness (millimetres) and index. Range as for backVertexPower; the back surface found may exceed it.
 * Source: from memory of Jalie, Principles of Ophthalmic Lenses; the formula of backVertexPower solved for the back surface.
 */
export function backSurfaceFor(backVertex: number, front: number, thickness: number, index: number): number {
  const lens = checked({ front, back: 0, thickness, index });
  return within('back vertex power', backVertex, SURFACE_POWER) - vergenceAfter(lens.front, lens.thickness, lens.index);
}

/**
 * Returns by how much the lens falls short of its distance power for a near object (dioptres, negative when it is too weak):
 * the vergence leaving it less the ideal, back vertex power plus object vergence. `objectVergence` in dioptres at the front
 * vertex, -20 to 0 for a real object. Range of the lens as for backVertexPower.
 * Source: near vision effectivity, from memory of Jalie, Principles of Ophthalmic Lenses.
 */
export function nearEffectivityError(lens: ThickLens, objectVergence: number): number {
  const { front, back, thickness, index } = checked(lens);
  const arriving = within('object vergence', objectVergence, { least: -20, most: 0 });
  const leaving = vergenceAfter(arriving + front, thickness, index) + back;
  return leaving - (backVertexPower(lens) + arriving);
}

function checked(lens: ThickLens): ThickLens {
  return {
    front: within('front surface power', lens.front, SURFACE_POWER),
    back: within('back surface power', lens.back, SURFACE_POWER),
    thickness: within('thickness', lens.thickness, THICKNESS),
    index: within('index', lens.index, INDEX),
  };
}
