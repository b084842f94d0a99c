/** Two readings of a pair put together to one figure. */
import { tidy } from '../exact';
import type { Read } from '../reduce';

/** Sum of a right and a left figure, repeats and all. */
export const sumOf = (right: Read<number>, left: Read<number>): Read<number> => together(right, left, (a, b) => a + b);

/** Right less left. */
export const differenceOf = (right: Read<number>, left: Read<number>): Read<number> =>
  together(right, left, (a, b) => a - b);

/**
 * One figure of two readings. It belongs to the later reading; repeats are taken in pairs where both lenses were read
 * equally often, and else the means alone count.
 */
export function together<V>(right: Read<V>, left: Read<V>, figure: (right: V, left: V) => number): Read<number> {
  const later = left.reading > right.reading ? left : right;
  const value = tidy(figure(right.value, left.value));
  const all =
    right.all.length === left.all.length ? right.all.map((one, at) => tidy(figure(one, left.all[at] as V))) : [value];
  return { ...later, value, all, places: all.length > 1 ? later.places : [later.place] };
}
