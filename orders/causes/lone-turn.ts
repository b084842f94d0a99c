/** One axis outside and nothing else, beside the tilt of that lens’s segment or marks. */
import type { Eye } from '../../grammar';
import { isLess, isWithin } from '../exact';
import type { Failed, Scene } from './scene';

export interface LoneTurn {
  readonly eye: Eye;
  readonly turn: number;
  /** Degrees as a size; null where it was not read. */
  readonly tilt: number | null;
  /** Tilted as the axis is turned, level, tilted the other way, or not seen. */
  readonly marks: 'tilted' | 'level' | 'against' | 'unseen';
  readonly explains: readonly Failed[];
}

/** Degrees: what a tilt is read to, and the most that a lens turns in a rim unseen. Common practice, no source. */
const AS_READ = 1;
const MOST_TURN = 30;

/**
 * The tilt that a turn of the whole lens gives its segment, degrees, nasal end up positive. Axes count counter-clockwise
 * as seen facing the wearer (ISO 8429); the right lens then stands on the left with its nasal side to the right, so that
 * counter-clockwise lifts its nasal end, and lowers that of the left lens.
 * @param turn degrees, counter-clockwise positive
 */
export const tiltByTurn = (eye: Eye, turn: number): number => (eye === 'R' ? turn : 0 - turn);

/** The lone turn of a scene; null where anything else fails, or where the tilt agrees with neither story. */
export function loneTurn({ failed, values }: Scene): LoneTurn | null {
  const axes = failed.filter(({ quantity }) => quantity === 'axis');
  const [axis] = axes;
  if (axes.length !== 1 || !axis?.eye || isLess(MOST_TURN, Math.abs(axis.deviation))) return null;
  const { eye, deviation: turn } = axis;
  const explains = failed.filter((one) => one === axis || (one.quantity === 'segment-tilt' && one.eye === eye));
  if (explains.length < failed.length) return null;
  const read = values.figures['segment-tilt']?.[eye];
  if (!read) return { eye, turn, tilt: null, marks: 'unseen', explains };
  const marks = marksOf(tiltByTurn(eye, turn), read.value, read.unsided === true);
  return marks && { eye, turn, tilt: Math.abs(read.value), marks, explains };
}

function marksOf(expected: number, tilt: number, isUnsided: boolean): LoneTurn['marks'] | null {
  const isAlike = isUnsided
    ? isWithin(Math.abs(expected) - Math.abs(tilt), AS_READ)
    : isWithin(expected - tilt, AS_READ);
  if (isAlike) return 'tilted';
  if (isWithin(tilt, AS_READ)) return 'level';
  return !isUnsided && expected * tilt < 0 ? 'against' : null;
}
