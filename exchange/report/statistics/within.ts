import { sampleVariance } from 'simple-statistics';
import { tidy } from '../../../orders';
import { SMALL } from './small';

export interface Repeatability {
  /** How many times something was read more than once, and readings in all. */
  readonly groups: number;
  readonly readings: number;
  /** Standard deviation within the repeats. */
  readonly sd: number;
  /** Two readings of the same thing lie nearer together than this 95 times in 100. */
  readonly limit: number;
  readonly small: boolean;
}

/**
 * 1.96 times the root of 2: the repeatability coefficient of J. M. Bland and D. G. Altman, “Measurement error”, BMJ 313 (1996),
 * 744, and the repeatability limit of ISO 5725-6, where it is 2.8 (both from memory).
 */
const COEFFICIENT = 2.77;

/** Spread within repeats, pooled over everything that was repeated, each group weighted by its degrees of freedom. */
export class Within {
  #groups = 0;
  #readings = 0;
  #squares = 0;

  /** @param repeats readings of one thing in its own unit, two or more */
  add(repeats: readonly number[]): void {
    this.#groups++;
    this.#readings += repeats.length;
    this.#squares += sampleVariance([...repeats]) * (repeats.length - 1);
  }

  result(): Repeatability | null {
    const freedom = this.#readings - this.#groups;
    if (freedom < 1) return null;
    const sd = Math.sqrt(this.#squares / freedom);
    return {
      groups: this.#groups,
      readings: this.#readings,
      sd: tidy(sd),
      limit: tidy(COEFFICIENT * sd),
      small: freedom < SMALL,
    };
  }
}
