/** A rate is never shown without its count and how sure it is. */
import { tidy } from '../../../orders';
import { SMALL } from './small';

export interface Rate {
  readonly count: number;
  readonly of: number;
  /** Null where there is nothing to take a share of. */
  readonly rate: number | null;
  /** Ends of the 95 % interval. */
  readonly low: number | null;
  readonly high: number | null;
  /** Too few for more than a first impression. */
  readonly small: boolean;
}

/** Two-sided 95 % point of the standard normal distribution, as in any table of it. */
export const Z95 = 1.959963985;

/**
 * A share with its 95 % score interval: E. B. Wilson, “Probable inference, the law of succession, and statistical
 * inference”, Journal of the American Statistical Association 22 (1927), 209-212 (title and formula from memory). Unlike the
 * plain interval it stays between 0 and 1, and it says something also of 0 out of 20.
 * @param count whole number from 0 to `of`
 */
export function rateOf(count: number, of: number): Rate {
  if (of === 0) return { count, of, rate: null, low: null, high: null, small: true };
  const share = count / of;
  const weight = Z95 ** 2 / of;
  const middle = (share + weight / 2) / (1 + weight);
  const half = (Z95 / (1 + weight)) * Math.sqrt((share * (1 - share)) / of + weight / (4 * of));
  // The ends are exact there, and only rounding would say otherwise.
  const low = count === 0 ? 0 : tidy(middle - half);
  const high = count === of ? 1 : tidy(middle + half);
  return { count, of, rate: tidy(share), low, high, small: of < SMALL };
}
