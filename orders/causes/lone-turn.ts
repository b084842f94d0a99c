/** One axis outside and nothing else, beside the tilt of that lens’s segment or marks. */
import type { Eye } from '../../grammar';
import { isLess, isWithin } from '../exact';
import type { Failed, Scene } from './scene';

export interface LoneTurn {
  readonly eye: Eye;
  readonly turn: number;
  /** Degrees as a size; null where it was not read. */
  readonly tilt: number | null;
  /** Tilted by as much as the axis, level, or not seen. */
  readonly marks: 'tilted' | 'level' | 'unseen';
  readonly explains: readonly Failed[];
}

/** Degrees: what a tilt is read to, and the most that a lens turns in a rim unseen. Common practice, no source. */
const AS_READ = 1;
const MOST_TURN = 30;

/** The lone turn of a scene; null where anything else fails, or where the tilt agrees with neither story. */
export function loneTurn({ failed, values }: Scene): LoneTurn | null {
  const axes = failed.filter(({ quantity }) => quantity === 'axis');
  const [axis] = axes;
  if (axes.length !== 1 || !axis?.eye || isLess(MOST_TURN, Math.abs(axis.deviation))) return null;
  const { eye, deviation: turn } = axis;
  const explains = failed.filter((one) => one === axis || (one.quantity === 'segment-tilt' && one.eye === eye));
  if (explains.length < failed.length) return null;
  const tilt = values.figures['segment-tilt']?.[eye]?.value ?? null;
  if (tilt === null) return { eye, turn, tilt, marks: 'unseen', explains };
  if (isWithin(Math.abs(turn) - Math.abs(tilt), AS_READ))
    return { eye, turn, tilt: Math.abs(tilt), marks: 'tilted', explains };
  return isWithin(tilt, AS_READ) ? { eye, turn, tilt: Math.abs(tilt), marks: 'level', explains } : null;
}
