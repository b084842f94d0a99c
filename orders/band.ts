/** Bands of a tolerance table: where a row begins and ends. */
import type { Band } from '../tables';
import { isLess, isSame } from './exact';

/** Whether a value lies in a band; the ends are compared to the printed digit. */
export function isInBand(value: number, { atLeast, above, atMost, below }: Band): boolean {
  if (atLeast !== undefined && isLess(value, atLeast)) return false;
  if (above !== undefined && (isLess(value, above) || isSame(value, above))) return false;
  if (atMost !== undefined && isLess(atMost, value)) return false;
  return below === undefined || isLess(value, below);
}

/** A band as a bench would say it: `0.00 to 6.50 D`, `above 6.50 D`, `below 0.12 D`. */
export function bandInWords({ atLeast, above, atMost, below }: Band, unit: string): string {
  const low = above ?? atLeast;
  const high = atMost ?? below;
  const figures = (value: number): string => value.toFixed(Number.isInteger(value * 100) ? 2 : 3);
  if (high === undefined)
    return low === undefined ? 'any' : `${above === undefined ? 'from' : 'above'} ${figures(low)} ${unit}`;
  if (below !== undefined && (low === undefined || low === 0)) return `below ${figures(below)} ${unit}`;
  return `${above === undefined ? '' : 'above '}${figures(low ?? 0)} to ${figures(high)} ${unit}`;
}
