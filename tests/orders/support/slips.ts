/** Slips of the bench, put into a reading where it would show them; the cause that should be named is the key. */
import type { Eye } from '../../../orders';
import { exactly, type LensRead, type Pair, type RandomJob } from './random-jobs';

export interface Slipped {
  readonly read: Pair;
  /** Where the slip needs another order. */
  readonly job?: RandomJob;
}

/** Null where the pair would not show the slip, or shows it no more than another one. */
type Slip = (job: RandomJob, read: Pair, at: number) => Slipped | null;

const change = (read: Pair, eyes: readonly Eye[], to: (lens: LensRead, eye: Eye) => Partial<LensRead>): Slipped => {
  const changed = eyes.map((eye) => [eye, { ...read[eye], ...to(read[eye], eye) }]);
  return { read: { ...read, ...Object.fromEntries(changed) } };
};

/** One eye or both. */
const sides = (at: number): readonly Eye[] => pick<readonly Eye[]>([['R'], ['L'], ['R', 'L']], at);

const pick = <T>(list: readonly T[], at: number): T => list[at % list.length] as T;

const all = (eyes: readonly Eye[], holds: (eye: Eye) => boolean): boolean => eyes.every(holds);

/** How far the axis is from its mirror image, degrees. */
const mirrorTurn = ({ axis }: LensRead): number => {
  const apart = (2 * axis) % 180;
  return Math.min(apart, 180 - apart);
};

const turned = (axis: number, by: number): number => ((axis + by + 359) % 180) + 1;

/** Whether two powers are at least half a dioptre apart. */
const areUnlike = (a: LensRead, b: LensRead): boolean =>
  Math.abs(a.sphere - b.sphere) >= 0.5 && Math.abs(a.sphere + a.cylinder - b.sphere - b.cylinder) >= 0.5;

const hasPrism = ({ ordered }: RandomJob): boolean => ordered.R.in !== 0 || ordered.R.up !== 0;

export const SLIPS: Readonly<Record<string, Slip>> = {
  'eyes-swapped': ({ ordered: { R, L } }, read) =>
    areUnlike(R, L)
      ? { read: { R: { ...read.R, ...refraction(read.L) }, L: { ...read.L, ...refraction(read.R) } } }
      : null,
  'axis-crossed': ({ ordered }, read, at) => {
    const eyes = sides(at);
    return all(eyes, (eye) => ordered[eye].cylinder <= -0.25)
      ? change(read, eyes, ({ axis }) => ({ axis: axis + 90 }))
      : null;
  },
  'lens-reversed': ({ ordered }, read, at) => {
    const eyes = sides(at);
    const shows = (eye: Eye): boolean => ordered[eye].cylinder <= -0.5 && mirrorTurn(ordered[eye]) >= 25;
    return all(eyes, shows) ? change(read, eyes, ({ axis }) => ({ axis: turned(180 - axis, 0) })) : null;
  },
  'sign-flipped': ({ ordered }, read, at) => {
    const eyes = sides(at);
    return all(eyes, (eye) => Math.abs(ordered[eye].sphere) >= 0.75)
      ? change(read, eyes, ({ sphere }) => ({ sphere: -sphere }))
      : null;
  },
  'form-misread': ({ ordered }, read, at) => {
    const eyes = sides(at);
    return all(eyes, (eye) => ordered[eye].cylinder <= -1)
      ? change(read, eyes, ({ sphere, cylinder }) => ({ sphere: sphere + cylinder }))
      : null;
  },
  'add-misread': ({ kind, ordered }, read, at) => {
    const eyes = sides(at);
    return kind === 'bifocal' && all(eyes, (eye) => ordered[eye].cylinder <= -0.75)
      ? change(read, eyes, ({ cylinder }, eye) => ({ add: exactly(ordered[eye].add - cylinder) }))
      : null;
  },
  'near-distance-swapped': ({ kind, ordered }, read) =>
    kind === 'bifocal' && ordered.R.pd - ordered.R.near >= 1.5 && !hasPrism({ ordered } as RandomJob)
      ? change(read, ['R', 'L'], ({ pd, near }) => ({ pd: near, near: pd }))
      : null,
  'one-centre-off': ({ kind }, read, at) =>
    kind === 'progressive'
      ? change(read, [at % 2 ? 'R' : 'L'], ({ pd }) => ({ pd: pd + (at % 4 < 2 ? 2.5 : -2.5) }))
      : null,
  'both-centres-off': ({ kind }, read, at) =>
    kind === 'progressive'
      ? change(read, ['R', 'L'], ({ pd }, eye) => ({
          pd: pd + (at % 3 === 0 ? 2 : at % 3 === 1 ? -2 : eye === 'R' ? 2.5 : -2.5),
        }))
      : null,
  'heights-swapped': ({ kind, ordered: { R, L } }, read) =>
    kind !== 'single-vision' && R.height - L.height >= 2
      ? { read: { R: { ...read.R, height: read.L.height }, L: { ...read.L, height: read.R.height } } }
      : null,
  'heights-shifted': ({ kind }, read, at) =>
    kind !== 'single-vision'
      ? change(read, ['R', 'L'], ({ height }) => ({ height: height + pick([1.8, -2, 3], at) }))
      : null,
  'edged-off-axis': ({ ordered }, read, at) =>
    all(['R', 'L'], (eye) => ordered[eye].cylinder <= -1)
      ? change(read, ['R', 'L'], (_, eye) => ({ axis: ordered[eye].axis + pick([6, -8, 5], at) }))
      : null,
  'base-reversed': ({ kind, ordered }, read, at) =>
    kind === 'single-vision' && ordered.R.in >= 1 ? change(read, sides(at), (lens) => ({ in: -lens.in })) : null,
  'base-curve-index': (job, read) =>
    job.lines.some((line) => line.endsWith('1.67')) && job.ordered.R.base >= 4
      ? change(read, ['R', 'L'], (_, eye) => ({ base: (job.ordered[eye].base * 0.53) / 0.67 }))
      : null,
  'other-segment': ({ kind }, read, at) =>
    kind === 'bifocal' ? change(read, sides(at), () => ({ width: pick([25, 35], at) })) : null,
};

const refraction = ({ sphere, cylinder, axis }: LensRead) => ({ sphere, cylinder, axis });
