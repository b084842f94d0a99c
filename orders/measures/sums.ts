/** Two readings of a pair put together to one figure. */
import { tidy } from '../exact';
import type { Read } from '../reduce';
import type { Step } from '../step';

type Both = Extract<Step, { step: 'sum' | 'less' }>;

/** Sum of a right and a left length, millimetres, repeats and all. */
export const sumOf = (right: Read<number>, left: Read<number>): Read<number> =>
  together(right, left, (a, b) => a + b, lengths('sum'));

/** Right less left, millimetres. */
export const differenceOf = (right: Read<number>, left: Read<number>): Read<number> =>
  together(right, left, (a, b) => a - b, lengths('less'));

const lengths =
  (step: Both['step']) =>
  (right: number, left: number, result: number): Both => ({ step, of: 'length', right, left, result, unit: 'mm' });

/**
 * One figure of two readings. It belongs to the later reading; repeats are taken in pairs where both lenses were read
 * equally often, and else the means alone count.
 * @param way how the figure came about, from both values and the result
 */
export function together<V>(
  right: Read<V>,
  left: Read<V>,
  figure: (right: V, left: V) => number,
  way: (right: V, left: V, result: number) => Step,
): Read<number> {
  const later = left.reading > right.reading ? left : right;
  const value = tidy(figure(right.value, left.value));
  const all =
    right.all.length === left.all.length ? right.all.map((one, at) => tidy(figure(one, left.all[at] as V))) : [value];
  const steps = [...right.steps, ...left.steps, way(right.value, left.value, value)];
  return { ...later, value, steps, all, places: all.length > 1 ? later.places : [later.place] };
}
