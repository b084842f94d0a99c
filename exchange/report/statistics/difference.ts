import { tidy } from '../../../orders';
import { Z95 } from './rate';
import type { Moments } from './sample';
import { SMALL } from './small';

export interface Difference {
  readonly difference: number;
  /** Ends of the 95 % interval; null where a side has fewer than two figures. */
  readonly low: number | null;
  readonly high: number | null;
  readonly small: boolean;
}

type Side = Pick<Moments, 'count' | 'mean' | 'sd'>;

/**
 * One mean less another, with the interval for two samples of unequal spread (B. L. Welch, Biometrika 34 (1947), 28-35,
 * from memory), taking the normal distribution in the place of Student’s: with small samples it is somewhat too narrow,
 * and they are said to be small.
 */
export function differenceOf(one: Side, other: Side): Difference {
  const difference = tidy(one.mean - other.mean);
  const small = Math.min(one.count, other.count) < SMALL;
  if (one.sd === null || other.sd === null) return { difference, low: null, high: null, small };
  const half = Z95 * Math.sqrt(one.sd ** 2 / one.count + other.sd ** 2 / other.count);
  return { difference, low: tidy(one.mean - other.mean - half), high: tidy(one.mean - other.mean + half), small };
}
