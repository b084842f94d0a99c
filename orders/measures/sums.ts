/** Two readings of a pair put together to one figure. */
import { tidy } from '../exact';
import type { Place } from '../finding';
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
 * One figure of two readings. It belongs to the later reading.
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
  const repeats = eachRepeat(
    right,
    left,
    (a, b) => tidy(figure(a, b)),
    (one) => one,
  );
  const all = repeats.length > 0 ? repeats.map(({ of }) => of) : [value];
  const places = repeats.length > 0 ? repeats.map(({ place }) => place) : [later.place];
  const steps = [...right.steps, ...left.steps, way(right.value, left.value, value)];
  return { ...later, value, steps, all, places };
}

/**
 * What the repeats of two lenses give, and where each stands; none where both were read once. They are taken in pairs
 * where both were read equally often, unless each with the mean of the other shows that they lie farther apart.
 * @param size of a figure, by which it is told how far they lie apart
 */
export function eachRepeat<V, F>(
  right: Read<V>,
  left: Read<V>,
  figure: (right: V, left: V) => F,
  size: (figure: F) => number,
): readonly Repeated<F>[] {
  if (right.all.length < 2 && left.all.length < 2) return [];
  const placeOf = ({ places, place }: Read<V>, at: number): Place => places[at] ?? place;
  const ofRight = right.all.map((one, at) => ({ of: figure(one, left.value), place: placeOf(right, at) }));
  const ofLeft = left.all.map((one, at) => ({ of: figure(right.value, one), place: placeOf(left, at) }));
  const each = [...(ofRight.length > 1 ? ofRight : []), ...(ofLeft.length > 1 ? ofLeft : [])];
  if (right.all.length !== left.all.length) return each;
  const pairs = right.all.map((one, at) => ({ of: figure(one, left.all[at] as V), place: placeOf(left, at) }));
  return spread(each, size) > spread(pairs, size) ? each : pairs;
}

interface Repeated<F> {
  readonly of: F;
  readonly place: Place;
}

function spread<F>(list: readonly Repeated<F>[], size: (figure: F) => number): number {
  const sizes = list.map(({ of }) => size(of));
  return tidy(Math.max(...sizes) - Math.min(...sizes));
}
