/**
 * How a spread fits between its limits. Pp and Ppk use the spread of all figures together; Cp and Cpk would need the spread
 * within small groups made under the same conditions, which order files do not tell. Names as in ISO 22514-2 and in handbooks
 * of statistical process control (from memory, texts not seen).
 */
import { tidy } from '../../../orders';
import { Z95 } from './rate';
import type { Moments } from './sample';
import { SMALL_FOR_CAPABILITY } from './small';

export interface Capability {
  /** Width between the limits over six standard deviations; null where only one side has a limit. */
  readonly pp: number | null;
  /** Distance from the mean to the nearer limit over three standard deviations. */
  readonly ppk: number;
  /** Ends of the 95 % interval of Ppk. */
  readonly low: number;
  readonly high: number;
  readonly small: boolean;
}

/**
 * Capability of deviations given as shares of their own limit, so that limits of different orders count alike.
 * @param sides `both` for limits at -1 and +1; `above` for sizes, which have a limit only at +1
 * @returns null below two figures, or where all are equal and no spread can be told. The interval is that of A. F. Bissell,
 * “How reliable is your capability index?”, Applied Statistics 39 (1990), 331-340 (from memory); it holds for figures
 * that are spread like the normal distribution, which sizes are not.
 */
export function capabilityOf(
  { count, mean, sd }: Pick<Moments, 'count' | 'mean' | 'sd'>,
  sides: 'both' | 'above',
): Capability | null {
  if (sd === null || sd < 1e-9) return null;
  const nearest = sides === 'both' ? 1 - Math.abs(mean) : 1 - mean;
  const ppk = nearest / (3 * sd);
  const half = Z95 * Math.sqrt(1 / (9 * count) + ppk ** 2 / (2 * (count - 1)));
  return {
    pp: sides === 'both' ? tidy(1 / (3 * sd)) : null,
    ppk: tidy(ppk),
    low: tidy(ppk - half),
    high: tidy(ppk + half),
    small: count < SMALL_FOR_CAPABILITY,
  };
}
