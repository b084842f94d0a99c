import fc from 'fast-check';
import type { Power } from '../../../optics/power';

/** The seed of all random cases, so that a run can be repeated; the titles of the tests print it. */
export const seed = 20_261_124;

/** Checks a property on many random cases with the fixed seed. */
export function holds<Values extends [unknown, ...unknown[]]>(
  ...args: [...{ [Position in keyof Values]: fc.Arbitrary<Values[Position]> }, (...values: Values) => void]
): void {
  const check = args.pop() as (...values: Values) => void;
  const arbitraries = args as unknown as { [Position in keyof Values]: fc.Arbitrary<Values[Position]> };
  fc.assert(fc.property(...arbitraries, check), { seed, numRuns: 500 });
}

/** Any real number from one bound to another. */
export function real(least: number, most: number): fc.Arbitrary<number> {
  return fc.double({ min: least, max: most, noNaN: true });
}

/** Axes, whole or broken, above 0 and up to 180. */
export const axis: fc.Arbitrary<number> = fc.oneof(fc.integer({ min: 1, max: 180 }), real(1e-6, 180));

/** Lenses in either form, on quarters or not, with both principal powers within `most` dioptres. */
export function lens(most = 40): fc.Arbitrary<Power> {
  const quarters = fc.integer({ min: -most * 4, max: most * 4 }).map((count) => count / 4);
  const power = fc.oneof(quarters, real(-most, most));
  return fc
    .tuple(power, power, axis)
    .map(([first, second, angle]) => ({ sphere: first, cylinder: second - first, axis: angle }))
    .filter(({ sphere, cylinder }) => Math.abs(sphere + cylinder) <= most)
    .map(({ sphere, cylinder, axis: angle }) => ({
      sphere: sphere + 0,
      cylinder: cylinder + 0,
      axis: cylinder === 0 ? 180 : angle,
    }));
}
