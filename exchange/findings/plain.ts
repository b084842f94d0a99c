/** Figures and places as JSON holds them: rounded to 1e-4, never -0, never NaN. */
import { type Place, type Power, type Range, type Step, tidy } from '../../orders';
import type { PowerJson } from './shape';

/** A figure for output; one that is none (NaN, infinite) becomes null. */
export const plain = (value: number | null): number | null =>
  value === null || !Number.isFinite(value) ? null : tidy(value);

export const plainPower = ({ sphere, cylinder, axis }: Power): PowerJson => ({
  sphere: tidy(sphere),
  cylinder: tidy(cylinder),
  axis: tidy(cylinder) === 0 ? null : tidy(axis),
});

/** The same step with every figure rounded. */
export const plainStep = (step: Step): Step =>
  Object.fromEntries(
    Object.entries(step).map(([key, value]) => [
      key,
      typeof value === 'number' ? tidy(value) : Array.isArray(value) ? value.map(tidy) : value,
    ]),
  ) as Step;

/** @param firstLine number of the first line of the place’s block in its file */
export const rangeOf = ({ line, start, end }: Place, firstLine: number): Range => ({
  start: { line: firstLine + line, character: start },
  end: { line: firstLine + line, character: end },
});
