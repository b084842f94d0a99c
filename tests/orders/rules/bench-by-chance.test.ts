/** How often a pair that is merely off looks like a drum that is off, and how often one that is off is found. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seed } from '../../grammar/support/random-text';
import { told } from '../../support/findings';
import { pair } from '../../support/judged';

const PAIRS = 2000;

/** Errors in steps of the display, of each figure for itself, and one shift that all of them share. */
const lens = (step: number) =>
  fc.record({
    sphere: fc.integer({ min: -24, max: 24 }).map((quarters) => quarters / 4),
    cylinder: fc.integer({ min: -12, max: -1 }).map((quarters) => quarters / 4),
    sphereOff: fc.integer({ min: -Math.floor(0.25 / step), max: Math.floor(0.25 / step) }).map((steps) => steps * step),
    cylinderOff: fc
      .integer({ min: -Math.floor(0.13 / step), max: Math.floor(0.13 / step) })
      .map((steps) => steps * step),
  });
type Lens = ReturnType<typeof lens> extends fc.Arbitrary<infer V> ? V : never;

const power = (sphere: number, cylinder: number): string => {
  const figure = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(3)}`;
  return `${figure(sphere)} ${figure(cylinder)} x 090`;
};

const text = ({ R, L }: { readonly R: Lens; readonly L: Lens }, step: number, shift: number | null): string =>
  pair(
    [`R ${power(R.sphere, R.cylinder)}`, `L ${power(L.sphere, L.cylinder)}`],
    [R, L].map((one, at) =>
      shift === null
        ? `${at === 0 ? 'R' : 'L'} ${power(one.sphere + one.sphereOff, Math.min(0, one.cylinder + one.cylinderOff))} with M`
        : `${at === 0 ? 'R' : 'L'} ${power(one.sphere + shift, one.cylinder)} with M`,
    ),
    ['standard z80.1-2015', 'instrument M', `  reads-to ${step}`],
  );

const share = (step: number, shift: number | null): number => {
  const pairs = fc.sample(fc.record({ R: lens(step), L: lens(step) }), {
    numRuns: shift === null ? PAIRS : PAIRS / 4,
    seed,
  });
  const found = pairs.filter((one) => told(text(one, step, shift), 'zero-like-shift').length > 0);
  return (100 * found.length) / pairs.length;
};

test.each([0.01, 0.125])(`errors of their own seldom look like one shift, on steps of %s (seed ${seed})`, (step) => {
  const percent = share(step, null);
  console.log(`${PAIRS} pairs read in steps of ${step} D: ${percent.toFixed(2)} % look like a zero that is off`);
  expect(percent).toBeLessThan(1);
});

test.each([0.01, 0.125])(`a drum that is off by a quarter is found, on steps of %s (seed ${seed})`, (step) => {
  expect(share(step, 0.25)).toBeGreaterThan(99);
});
