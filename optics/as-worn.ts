import { degrees, radians } from './angles';
import { normalAxis, type Power } from './power';
import { fromMatrix, toMatrix, turnedAxes } from './power-matrix';
import type { Eye } from './prism';
import { EFFECTIVE_TILT, INDEX, TILT, within } from './range';
import { powerForVertex } from './vertex';

/**
 * How a lens sits before the eye, degrees: `pantoscopic` tilt, positive with the lower edge towards the cheek, and `wrap`,
 * positive with the temporal edge towards the temple. The frame is tipped first and then wrapped, as in the cited papers.
 */
export interface PositionOfWear {
  readonly eye: Eye;
  readonly pantoscopic: number;
  readonly wrap: number;
}

/** The gain of power along the tilt axis at a tilt in degrees, no unit. */
export type TiltFactor = (tilt: number, index: number) => number;

/**
 * Returns the one tilt (degrees, 0 or above) that pantoscopic tilt and wrap (degrees, within 45 each) come to together.
 * Other angles throw OutOfRange.
 * Source: Keating, Optom Vis Sci 1995;72(4):258–265, from memory.
 */
export function effectiveTilt(pantoscopic: number, wrap: number): number {
  const p = radians(within('pantoscopic tilt', pantoscopic, TILT));
  const w = radians(within('wrap', wrap, TILT));
  return degrees(Math.atan2(Math.hypot(Math.sin(w), Math.tan(p)), Math.cos(w)));
}

/**
 * Returns the gain of power along the tilt axis, no unit, exact for a thin lens met obliquely through its optical centre. A
 * tilt beyond 75 degrees or an index outside 1 to 3 throws OutOfRange.
 * Source: Coddington's sagittal equation, from memory of Keating, Geometric, Physical and Visual Optics.
 */
export function obliqueFactor(tilt: number, index: number): number {
  const angle = radians(within('tilt', tilt, EFFECTIVE_TILT));
  const n = within('index', index, INDEX);
  return (Math.sqrt(n ** 2 - Math.sin(angle) ** 2) - Math.cos(angle)) / (n - 1);
}

/**
 * Returns what a lens acts as when worn (dioptres, minus form, axis as seen straight on), from the power it verifies as. Thin
 * lens, its optical centre straight before the pupil. `factor` is the exact one or martinFactor. Values outside
 * their range throw OutOfRange.
 * Source: tilted power matrix of Harris, Tilted power of thin lenses, 2002, and Keating 1995, both from memory.
 */
export function wornPower(
  power: Power,
  position: PositionOfWear,
  index: number,
  factor: TiltFactor = obliqueFactor,
): Power {
  const { tilt, onLens, asSeen } = tiltOf(position);
  const { xx, xy, yy } = turnedAxes(toMatrix(power), onLens);
  const gain = factor(tilt, index);
  const foreshortened = Math.cos(radians(tilt));
  const worn = { xx: xx * gain, xy: (xy * gain) / foreshortened, yy: (yy * gain) / foreshortened ** 2 };
  return fromMatrix(turnedAxes(worn, -asSeen));
}

/**
 * Returns the power to order (dioptres, minus form), so that the lens acts as `power` when worn. It is also the power that the
 * finished lens verifies as on a focimeter: not the prescription. Values outside their range throw OutOfRange.
 * Source: the inverse of wornPower.
 */
export function powerForWear(
  power: Power,
  position: PositionOfWear,
  index: number,
  factor: TiltFactor = obliqueFactor,
): Power {
  const { tilt, onLens, asSeen } = tiltOf(position);
  const { xx, xy, yy } = turnedAxes(toMatrix(power), asSeen);
  const gain = factor(tilt, index);
  const foreshortened = Math.cos(radians(tilt));
  const flat = { xx: xx / gain, xy: (xy * foreshortened) / gain, yy: (yy * foreshortened ** 2) / gain };
  return fromMatrix(turnedAxes(flat, -onLens));
}

/**
 * Returns the compensated order, which is also the power it will verify as (dioptres, minus form), for a prescription found at
 * a `tested` vertex distance and worn at a `worn` one (millimetres) in a tilted frame. First the vergence is carried to the
 * plane of wear, then the tilt is taken out. Values outside their range throw OutOfRange.
 * Source: powerForVertex and powerForWear.
 */
export function compensatedOrder(
  prescription: Power,
  vertex: { readonly tested: number; readonly worn: number },
  position: PositionOfWear,
  index: number,
): Power {
  return powerForWear(powerForVertex(prescription, vertex.tested, vertex.worn), position, index);
}

/**
 * Returns the prism (prism dioptres, positive base out) that wrap alone brings, whatever the prescription, from the front
 * surface power (dioptres), centre thickness (millimetres), index and wrap (degrees, within 45).
 * Values outside their range throw OutOfRange.
 * Source: 20/20 magazine, Know the angles; the base follows by tracing a ray through the lens.
 */
export function prismFromWrap(front: number, thickness: number, index: number, wrap: number): number {
  const path = within('thickness', thickness, { least: 0, most: 50 }) / 1000 / within('index', index, INDEX);
  const power = within('front surface power', front, { least: -60, most: 60 });
  return 100 * path * power * Math.sin(radians(within('wrap', wrap, TILT))) + 0;
}

/** The tilt axis lies at different angles on the turned lens and as seen straight on when a frame is both tipped and wrapped. */
function tiltOf(position: PositionOfWear): { tilt: number; onLens: number; asSeen: number } {
  const tilt = effectiveTilt(position.pantoscopic, position.wrap);
  const p = radians(position.pantoscopic);
  const w = radians(position.eye === 'R' ? position.wrap : -position.wrap);
  const onLens = degrees(Math.atan2(-Math.sin(w), Math.sin(p) * Math.cos(w)));
  const asSeen = degrees(Math.atan2(-Math.sin(w) * Math.cos(p), Math.sin(p)));
  return { tilt, onLens: normalAxis(onLens), asSeen: normalAxis(asSeen) };
}
