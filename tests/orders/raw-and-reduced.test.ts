/** Drum positions and the same figures reduced by hand give the same measures; so do all spellings of one lens. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../orders';
import { holds, seed } from '../grammar/support/random-text';
import { judged, pair } from '../support/judged';

/** In hundredths, so that sums are exact: a lens as ordered, as read beside it, an add, and a zero. */
const cases = fc.record({
  sphere: fc.integer({ min: -1200, max: 1200 }),
  cylinder: fc.integer({ min: -400, max: -25 }),
  axis: fc.integer({ min: 1, max: 180 }),
  off: fc.integer({ min: -20, max: 20 }),
  turned: fc.integer({ min: -6, max: 6 }),
  add: fc.integer({ min: 75, max: 350 }),
  addOff: fc.integer({ min: -20, max: 20 }),
  zero: fc.integer({ min: -6, max: 6 }),
});
type Read = typeof cases extends fc.Arbitrary<infer V> ? V : never;

const typed = (hundredths: number): string =>
  hundredths === 0 ? '0.00' : `${hundredths < 0 ? '-' : '+'}${(Math.abs(hundredths) / 100).toFixed(2)}`;
const wheel = (axis: number): string => String(((axis + 179) % 180) + 1).padStart(3, '0');

const orderOf = ({ sphere, cylinder, axis, add }: Read): string[] => [
  `R ${typed(sphere)} ${typed(cylinder)} x ${wheel(axis)}`,
  `L ${typed(sphere)}`,
  `add ${typed(add)}`,
  'design bifocal flat-top 28',
  'supply uncut',
];

/** What is compared: everything but where it stands and how it came about. */
const plain = ({ place, steps, repeats, ...rest }: Measure) => rest;
const measuresOf = (one: Read, ...lines: readonly string[]) =>
  judged(pair(orderOf(one), [...lines])).measures.map(plain);

test(`drum positions and their reduction by hand agree in every measure (seed ${seed})`, () => {
  holds(150, cases, (one) => {
    const { sphere, cylinder, axis, off, turned, add, addOff, zero } = one;
    const [thin, wide] = [sphere + off, sphere + cylinder + off];
    const axes = wheel(axis + turned);
    // As the drum shows it, with its zero in it; and what a person takes down after taking it off.
    const raw = measuresOf(
      one,
      `zero ${typed(zero)}`,
      `R lines ${typed(thin + zero)} / ${typed(wide + zero)} x ${axes}`,
      `add R ${typed(thin + zero)} -> ${typed(thin + zero + add + addOff)} front-vertex`,
    );
    const byHand = measuresOf(one, `R ${typed(thin)} ${typed(wide - thin)} x ${axes}`, `add R ${typed(add + addOff)}`);
    expect(raw).toEqual(byHand);
    expect(raw.filter(({ outcome }) => outcome !== 'not-read').length).toBeGreaterThan(2);
  });
});

test(`one lens is one lens in either form, by its meridians and by the drum from either end (seed ${seed})`, () => {
  holds(100, cases, (one) => {
    const { sphere, cylinder, axis, off, turned } = one;
    const [thin, wide] = [typed(sphere + off), typed(sphere + off + cylinder)];
    const [along, across] = [wheel(axis + turned), wheel(axis + turned + 90)];
    const expected = measuresOf(one, `R ${thin} ${typed(cylinder)} x ${along}`);
    for (const line of [
      `R ${wide} ${typed(-cylinder)} x ${across}`,
      `R ${thin} @ ${along} / ${wide} @ ${across}`,
      `R lines ${thin} / ${wide} x ${along}`,
      `R lines wide ${wide} thin ${thin} x ${along}`,
      // Taken from the other end, the wheel stands 90 degrees off.
      `R lines ${wide} / ${thin} x ${across}`,
    ])
      expect(measuresOf(one, line), line).toEqual(expected);
  });
});

test.each([
  // Single lines +2.00, triple lines -1.00, wheel 090: minus-cylinder technique, from memory of Brooks & Borish.
  ['R lines +2.00 / -1.00 x 090', { sphere: 2, cylinder: -3, axis: 90 }],
  // Thin +3.25, wide +6.00 at 12: own sum. +6.00 -2.75 x 102 is the same lens.
  ['R lines +3.25 / +6.00 x 012', { sphere: 6, cylinder: -2.75, axis: 102 }],
  // Thin +2.00, wide +5.00: a how-to page on reading a drum (86m.net), +2.00 +3.00.
  ['R lines +2.00 / +5.00 x 090', { sphere: 5, cylinder: -3, axis: 180 }],
])('%s', (line, power) => {
  expect(judged(pair(['R plano', 'L plano'], [line])).values.power.R?.value).toEqual(power);
});

test.each([
  // Distance -3.00, segment -0.50: own sum by the same rule. Wide lines +6.00 and +8.50: likewise.
  ['add R -3.00 -> -0.50 front-vertex', 2.5],
  ['add R +6.00 -> +8.50 front-vertex', 2.5],
  // Near wide lines +6.00 less wide lines +5.00: the how-to page.
  ['add R +5.00 -> +6.00 front-vertex', 1],
])('%s', (line, add) => {
  expect(judged(pair(['R plano', 'L plano', 'add +2.00', 'design bifocal round 22'], [line])).values.add.R?.value).toBe(
    add,
  );
});

describe('readings of places', () => {
  const order = ['R -4.00', 'L -4.00', 'pd 63', 'frame A 50 DBL 18'];
  const measureOf = (quantity: Measure['quantity'], ...lines: readonly string[]) =>
    judged(pair(order, [...lines])).measures.filter((one) => one.quantity === quantity);

  test.each([
    ['pd', ['pd R 31 L 32.5'], ['pd 63.5']],
    ['pd', ['optical-centres R 31 L 32.5'], ['optical-centres 63.5']],
    ['pd', ['pd 63.5'], ['optical-centres 63.5']],
    ['prism-vertical', ['prism R 0.50 base 090 L 0'], ['prism R 0.50 BU L 0']],
    ['prism-vertical', ['prism R 0.50 base 270 L 0.25 base 270'], ['prism R 0.50 BD L 0.25 BD']],
  ] as const)('%s: %s is %s', (quantity, raw, reduced) => {
    const [a, b] = [measureOf(quantity, ...raw), measureOf(quantity, ...reduced)];
    expect(a.map(plain)).toEqual(b.map(plain));
    expect(a).toHaveLength(1);
  });

  test('the way of a sum, a difference and a ring is kept', () => {
    expect(measureOf('pd', 'pd R 31 L 32.5')[0]?.steps).toEqual([
      { step: 'sum', of: 'length', right: 31, left: 32.5, result: 63.5, unit: 'mm' },
    ]);
    // -4.00 is above 3.375 D: the centres are judged by height.
    expect(measureOf('height-difference', 'height R 18 L 17.5')[0]?.steps).toEqual([
      { step: 'less', of: 'length', right: 18, left: 17.5, result: 0.5, unit: 'mm' },
    ]);
    expect(measureOf('prism-vertical', 'prism R 0.50 base 090 L 0.25 BU')[0]?.steps).toEqual([
      { step: 'ring', ring: 0.5, degrees: 90, in: 0, up: 0.5 },
      { step: 'less', of: 'base-up', right: 0.5, left: 0.25, result: 0.25, unit: 'prism' },
    ]);
  });
});
