/**
 * An explanation undoes one slip in the figures read, or in the order, and judges the case again. It holds only where all
 * it changes comes out inside, and much better than it was.
 */
import type { Eye } from '../../grammar';
import { isSame } from '../exact';
import type { FindingData } from '../finding';
import type { Measure, Quantity } from '../measures/measure';
import { type Change, type Failed, isRefraction, type Scene } from './scene';

export interface Explanation {
  /** Null where the cause is one of the pair. */
  readonly eye: Eye | null;
  readonly data: FindingData;
  readonly explains: readonly Failed[];
  /** What is left of the explained deviations, as a mean share of their limits. */
  readonly left: number;
  /** A guess from a single figure that nothing contradicts; any explanation with more evidence goes first. */
  readonly weak?: true;
}

/** What an undone slip sets right. */
export type SetRight = Pick<Explanation, 'explains' | 'left'>;

export interface Demand {
  /** The measures that may change. */
  readonly of: readonly Quantity[];
  /** Eyes in which something must have failed and be set right. */
  readonly eyes?: readonly Eye[];
  /** The lenses whose refraction may change; without it, both. */
  readonly refractionOf?: readonly Eye[];
  /** The most that may be left of each explained deviation, in its unit. */
  readonly most?: number;
}

/** One figure alone fits many a guess, so it has to fit to half its limit; several together fit by chance no more. */
const SHARE_OF_ONE = 0.5;

/** The explained deviations together have to shrink to this share at least. */
const MUCH_BETTER = 0.5;

/** The limit of a weak cylinder is wide enough for half the angles there are; an axis that is explained fits to this, degrees. */
const MOST_TURN = 5;

/** A cause that leaves more outside than it sets right is not what happened. */
export const isMostOf = (scene: Scene, explains: readonly Failed[]): boolean =>
  explains.length * 2 >= scene.failed.length;

/** Whether anything failed that the explanation would speak of; asked before anything is measured again. */
export const mayHold = ({ failed }: Scene, { of, eyes = [] }: Demand): boolean => {
  const meant = failed.filter(({ quantity }) => of.includes(quantity));
  return meant.length > 0 && eyes.every((eye) => meant.some((one) => one.eye === eye));
};

/**
 * The failed measures that a change sets right, or null where the explanation does not hold: something it changes is
 * still or newly outside, it leaves part of what failed in a lens unexplained, or it fits little better than before.
 */
export function setRight(scene: Scene, change: Change, demand: Demand): SetRight | null {
  if (!mayHold(scene, demand)) return null;
  const { of, eyes, refractionOf, most } = demand;
  const isAsked = (one: Measure): boolean =>
    of.includes(one.quantity) &&
    (!refractionOf || !isRefraction(one) || one.eye === null || refractionOf.includes(one.eye));
  const before = scene.evaluation.measures.filter(isAsked);
  const explains: Failed[] = [];
  let was = 0;
  let left = 0;
  let loose = false;
  for (const after of scene.measuresWith(change, of, refractionOf)) {
    const at = indexOf(before, after);
    const old = at < 0 ? undefined : before[at];
    if (old) before.splice(at, 1);
    if (!old || isUnchanged(old, after)) {
      if (!old && after.outcome === 'fail') return null;
      continue;
    }
    if (after.outcome !== 'pass') return null;
    const failed = scene.failed.find((one) => one === old);
    if (!failed) continue;
    const limit = after.limit?.amount || failed.limit.amount;
    const share = Math.abs(after.deviation ?? 0) / limit;
    if (Math.abs(after.deviation ?? 0) > (most ?? (after.quantity === 'axis' ? MOST_TURN : Infinity))) return null;
    if (share > SHARE_OF_ONE) loose = true;
    explains.push(failed);
    was += Math.abs(failed.deviation) / failed.limit.amount;
    left += share;
  }
  // What has no place any more, such as the axis of what became a sphere, was not explained.
  if (before.some(({ outcome }) => outcome === 'fail')) return null;
  if (explains.length === 0 || (explains.length === 1 && loose) || left > was * MUCH_BETTER) return null;
  if (eyes?.some((eye) => !explains.some((one) => one.eye === eye))) return null;
  return isWhole(scene, explains) ? { explains, left: left / explains.length } : null;
}

/** Where the same measure stands, or that of the same error; there are a dozen at most. */
function indexOf(measures: readonly Measure[], { quantity, eye, meridian }: Measure): number {
  const find = (wanted: Quantity | undefined): number =>
    measures.findIndex((one) => one.quantity === wanted && one.eye === eye && one.meridian === meridian);
  const same = find(quantity);
  return same >= 0 ? same : find(SAME_ERROR[quantity]);
}

/** The place of a pair is told as distance or as prism, whichever comes out worse; without the slip it may be the other. */
const SAME_ERROR: Readonly<Partial<Record<Quantity, Quantity>>> = {
  pd: 'prism-horizontal',
  'prism-horizontal': 'pd',
  'height-difference': 'prism-vertical',
  'prism-vertical': 'height-difference',
};

const isUnchanged = (a: Measure, b: Measure): boolean =>
  a.outcome === b.outcome && isSame(a.deviation ?? 0, b.deviation ?? 0);

/** A lens whose power, cylinder or axis is explained has none of them left outside. */
const isWhole = ({ failed }: Scene, explains: readonly Failed[]): boolean =>
  explains.every(
    (one) =>
      !isRefraction(one) ||
      failed.every((other) => other.eye !== one.eye || !isRefraction(other) || explains.includes(other)),
  );

/** An explanation that says how a failure is made up; nothing of it remains. */
export const madeUp = (
  eye: Eye | null,
  explains: readonly Failed[],
  data: Explanation['data'],
  weak = false,
): Explanation => ({ eye, explains, data, left: 0, ...(weak ? { weak: true } : {}) });
