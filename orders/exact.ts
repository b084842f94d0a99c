/**
 * Comparisons that are exact to the printed digit. Typed figures have at most four decimals, so a millionth is far
 * below anything typed and far above the noise of binary fractions.
 */
const SCALE = 1e6;

const whole = (value: number): number => Math.round(value * SCALE);

/** Whether the size of a deviation is at most a limit; exactly the limit is inside. */
export const isWithin = (deviation: number, limit: number): boolean => whole(Math.abs(deviation)) <= whole(limit);

export const isLess = (a: number, b: number): boolean => whole(a) < whole(b);
export const isSame = (a: number, b: number): boolean => whole(a) === whole(b);

/** A figure for output: to a ten-thousandth, halves away from zero, and never -0. */
export const tidy = (value: number): number => {
  const size = Math.round(Math.abs(value) * 1e4) / 1e4;
  return size === 0 ? 0 : value < 0 ? -size : size;
};

/** Rounds to so many decimals, halves away from zero, on the decimal figure rather than on its binary shadow. */
export function roundTo(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  const rounded = Math.sign(value) * Math.floor(Math.round(Math.abs(value) * factor * 1e6) / 1e6 + 0.5);
  return rounded === 0 ? 0 : rounded / factor;
}
