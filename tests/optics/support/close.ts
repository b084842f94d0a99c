import { expect } from 'vitest';

/** Checks that two records have the same names and that each pair of values differs by at most `tolerance`. */
export function close(actual: object, wanted: object, tolerance: number): void {
  expect(Object.keys(actual).sort()).toEqual(Object.keys(wanted).sort());
  const values = new Map<string, number>(Object.entries(actual));
  for (const [name, value] of Object.entries(wanted) as [string, number][]) {
    const apart = Math.abs((values.get(name) ?? Number.NaN) - value);
    // Axis 0.0001 and axis 179.9999 are neighbours.
    const off = name === 'axis' || name === 'wheel' ? Math.min(apart, 180 - apart) : apart;
    expect(off, `${name} is ${values.get(name)}, wanted ${value}`).toBeLessThanOrEqual(tolerance);
  }
}
