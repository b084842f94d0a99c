import type { Measure } from '../measures/measure';

export type SomeMeasures = readonly [Measure, ...Measure[]];

/** Measures of one figure on the page, such as the power and the cylinder of a line: one slip shows in all, and is told once. */
export function byPlace(measures: readonly Measure[]): Iterable<SomeMeasures> {
  const groups = new Map<string, SomeMeasures>();
  for (const one of measures) {
    const key = `${one.place?.line}.${one.place?.start}.${one.eye}`;
    const known = groups.get(key);
    groups.set(key, known ? [...known, one] : [one]);
  }
  return groups.values();
}
