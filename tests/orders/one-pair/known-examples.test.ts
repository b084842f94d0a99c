/**
 * Pairs worked out by hand with Prentice's rule, each in every way its places can be written: prism in dioptres is power
 * times centimetres, of each lens by itself. PD 31 before each eye and heights of 18 are ordered.
 */
import { describe, expect, test } from 'vitest';
import { judged, measureOf, pair } from '../../support/judged';

interface Example {
  readonly what: string;
  readonly R: string;
  readonly L: string;
  /** Places of the centres: across, and above the lower tangent. */
  readonly centres: readonly [right: number, left: number];
  readonly heights?: readonly [right: number, left: number];
  /** What each lens makes of them. */
  readonly prism: string;
  /** Of the pair: base in over both eyes, and base up as right less left. */
  readonly imbalance: readonly [horizontal: number, vertical: number];
  readonly verdict: 'accept' | 'reject';
  readonly set?: string;
}

const EXAMPLES: readonly Example[] = [
  {
    // -0.50 x 0.4 cm in and 2.75 x 0.4 cm out.
    what: 'both to one side, and the powers far apart',
    R: '-0.50',
    L: '-2.75',
    centres: [35, 27],
    prism: 'R 0.20 BI L 1.10 BO',
    imbalance: [-0.9, 0],
    verdict: 'reject',
  },
  {
    what: 'centres too far apart on lenses of opposite powers',
    R: '+2.00',
    L: '-2.00',
    centres: [33, 33],
    prism: 'R 0.40 BO L 0.40 BI',
    imbalance: [0, 0],
    verdict: 'accept',
  },
  {
    what: 'both to one side on lenses of opposite powers, the distance right',
    R: '+2.00',
    L: '-2.00',
    centres: [33, 29],
    prism: 'R 0.40 BO L 0.40 BO',
    imbalance: [-0.8, 0],
    verdict: 'reject',
  },
  {
    what: 'the weak lens 2 mm too high beside a stronger one',
    R: '-0.50',
    L: '-3.25',
    centres: [31, 31],
    heights: [20, 18],
    prism: 'R 0.10 BD L 0',
    imbalance: [0, -0.1],
    verdict: 'accept',
  },
  {
    what: 'the stronger lens 2 mm too high',
    R: '-0.50',
    L: '-3.25',
    centres: [31, 31],
    heights: [18, 20],
    prism: 'R 0 L 0.65 BD',
    imbalance: [0, 0.65],
    verdict: 'reject',
  },
  {
    // Millimetres decide here, and the prism beside them is that of the weak lens.
    what: 'the weak lens of a strong pair 4 mm out',
    R: '-1.00',
    L: '-8.00',
    centres: [35, 31],
    prism: 'R 0.40 BI L 0',
    imbalance: [0.4, 0],
    verdict: 'reject',
  },
  {
    what: 'the weak lens of a strong pair 2.4 mm out',
    R: '-1.00',
    L: '-8.00',
    centres: [33.4, 31],
    prism: 'R 0.24 BI L 0',
    imbalance: [0.24, 0],
    verdict: 'accept',
  },
  {
    // 2.7 mm out and 0.3 mm in: 2.4 of 2.5 mm. That the strong lens makes 1.62 of it is no matter where millimetres decide.
    what: 'a strong lens out and a weak one in, as many millimetres as may be',
    R: '-6.00',
    L: '-2.00',
    centres: [33.7, 30.7],
    prism: 'R 1.62 BI L 0.06 BO',
    imbalance: [1.56, 0],
    verdict: 'accept',
  },
  {
    // Across the power is -2.00, and 1.00 of cross power makes prism upwards of a centre that is off across alone.
    what: 'an oblique cylinder, off across alone',
    R: '-1.00 -2.00 x 045',
    L: '-2.00',
    centres: [35, 31],
    prism: 'R 0.80 BI 0.40 BD L 0',
    imbalance: [0.8, -0.4],
    verdict: 'reject',
  },
  {
    // 0.32 across is inside; 0.34 up or down, made by the cross power, is not.
    what: 'an oblique cylinder whose cross prism alone is too much',
    R: '+0.95 -4.00 x 045',
    L: '-1.00',
    centres: [32.7, 31],
    prism: 'R 0.18 BI 0.34 BD L 0',
    imbalance: [0.1785, -0.34],
    verdict: 'reject',
  },
  {
    // Each lens may have 0.25, and the pair 0.50.
    what: 'New Jersey limits each lens as well',
    R: '-1.00',
    L: '-3.00',
    centres: [31, 32],
    prism: 'R 0 L 0.30 BI',
    imbalance: [0.3, 0],
    verdict: 'reject',
    set: 'nj-13-35-5.2',
  },
  {
    // Above 3.25 D as much prism as 2 mm make in the stronger lens: 1.20. Each lens makes 0.6 of its own.
    what: 'ISO above 3.25 D: the prism of the shift',
    R: '-1.00',
    L: '-6.00',
    centres: [37, 32],
    prism: 'R 0.60 BI L 0.60 BI',
    imbalance: [1.2, 0],
    verdict: 'accept',
    set: 'iso-21987-2017',
  },
  {
    what: 'ISO above 3.25 D: a little more',
    R: '-1.00',
    L: '-6.00',
    centres: [37, 32.1],
    prism: 'R 0.60 BI L 0.66 BI',
    imbalance: [1.26, 0],
    verdict: 'reject',
    set: 'iso-21987-2017',
  },
];

const ORDER = ['pd R 31 L 31', 'height 18', 'design single-vision', 'supply glazed'];

const waysOf = ({ centres: [right, left], heights: [up, other] = [18, 18], prism }: Example) => ({
  'as prism': [`prism ${prism}`],
  'as prism with the PD beside it': [`prism ${prism}`, `pd R ${right} L ${left}`],
  'as optical centres': [`optical-centres R ${right} L ${left}`, `height R ${up} L ${other}`],
  'as a PD of each eye': [`pd R ${right} L ${left}`, `height R ${up} L ${other}`],
});

describe.each(EXAMPLES)('$what', (one) => {
  const { R, L, set = 'z80.1-2015', verdict, imbalance } = one;
  const text = (places: readonly string[]): string =>
    pair([`R ${R}`, `L ${L}`, ...ORDER], [`R ${R}`, `L ${L}`, ...places], [`standard ${set}`]);

  test.each(Object.entries(waysOf(one)))('%s', (_, places) => {
    expect(judged(text(places)).verdict).toBe(verdict);
  });

  test('the prism that is told of the centres is the one the lenses make', () => {
    const places = text(waysOf(one)['as optical centres']);
    for (const [at, [quantity, inMm]] of [
      ['prism-horizontal', 'pd'],
      ['prism-vertical', 'height-difference'],
    ].entries()) {
      const found = judged(places).measures.filter(
        ({ quantity: name, eye }) => eye === null && (name === quantity || name === inMm),
      );
      expect(found).toHaveLength(1);
      const [measure] = found;
      const told = measure?.unit === 'prism' ? measure.deviation : measure?.beside?.amount;
      expect(Math.abs(told as number)).toBeCloseTo(Math.abs(imbalance[at] as number), 3);
    }
  });
});

describe('where only the whole is known, the worse split counts', () => {
  const text = (R: string, L: string, places: readonly string[], set = 'z80.1-2015'): string =>
    pair([`R ${R}`, `L ${L}`, ...ORDER], [`R ${R}`, `L ${L}`, ...places], [`standard ${set}`]);

  test.each([
    // All of 3 mm in -2.75: 0.83. All of it in -0.50: 0.15.
    ['-0.50', '-2.75', ['pd 65', 'height R 18 L 18'], 'reject'],
    ['-0.50', '-2.75', ['optical-centres 65', 'height R 18 L 18'], 'reject'],
    // All of 2.4 mm in -2.75: 0.66.
    ['-0.50', '-2.75', ['pd 64.4', 'height R 18 L 18'], 'accept'],
    // Each lens known: the whole is no more than a check on it.
    ['-0.50', '-2.75', ['pd 65', 'prism R 0.15 BI L 0'], 'accept'],
    // 6 mm in the weak lens make 0.30; half of them in each would make 0.98.
    ['-0.50', '-2.75', ['pd 68', 'prism R 0.30 BI L 0'], 'accept'],
    ['-0.50', '-2.75', ['pd R 34 L 31', 'height R 18 L 18'], 'accept'],
    ['-0.50', '-2.75', ['pd R 31 L 34', 'height R 18 L 18'], 'reject'],
    // In millimetres the whole says all.
    ['-0.50', '-8.00', ['pd 64.5', 'height R 18 L 18'], 'accept'],
    ['-0.50', '-8.00', ['pd 64.6', 'height R 18 L 18'], 'reject'],
  ] as const)('%s and %s, %j: %s', (R, L, places, verdict) => {
    expect(judged(text(R, L, places)).verdict).toBe(verdict);
  });

  test.each([
    ['-0.50', '-3.25', 'R 18 L 19', 'accept'],
    // All of 1.5 mm in -3.25: 0.49; known of each lens it would be 0.08.
    ['-0.50', '-3.25', 'R 19.5 L 18', 'reject'],
  ] as const)('without ordered heights, %s and %s read %s: %s', (R, L, heights, verdict) => {
    const order = [`R ${R}`, `L ${L}`, 'pd R 31 L 31', 'design single-vision', 'supply glazed'];
    const read = [`R ${R}`, `L ${L}`, 'pd R 31 L 31', `height ${heights}`];
    expect(judged(pair(order, read)).verdict).toBe(verdict);
  });
});

test.each([
  // All of 1 mm in one lens: 0.30 of 0.25. All of 0.8 mm: 0.24.
  ['pd 63', 'reject'],
  ['optical-centres 63', 'reject'],
  ['pd 62.8', 'accept'],
] as const)('a set that limits each lens takes the worse split of each: %s', (distance, verdict) => {
  const lenses = ['R -3.00', 'L -3.00'];
  const text = pair([...lenses, ...ORDER], [...lenses, distance, 'height R 18 L 18'], ['standard nj-13-35-5.2']);
  expect(judged(text).verdict).toBe(verdict);
});

describe('bare centres of a lens with ordered prism', () => {
  // -2.00 across and up, 0.50 of cross power: 2.00 base out takes a centre 10.67 mm in, and 2.67 mm up; the height is that
  // of the point with the prism. 1.00 base up takes it 1.33 mm out, and 5.33 mm down. Determinant 3.75.
  test.each([
    ['prism R 2 BO L 0', 'R 20.33 L 31', 'accept'],
    ['prism R 1 BU L 0', 'R 32.33 L 31', 'accept'],
    // 3 mm further out than that: 0.60 more base in.
    ['prism R 2 BO L 0', 'R 23.33 L 31', 'accept'],
    // 3.5 mm: 0.70.
    ['prism R 2 BO L 0', 'R 23.83 L 31', 'reject'],
    ['prism R 1 BU L 0', 'R 35.83 L 31', 'reject'],
  ] as const)('%s, centres read %s: %s', (prism, centres, verdict) => {
    const lenses = ['R -1.50 -1.00 x 045', 'L -1.50'];
    const read = [...lenses, `optical-centres ${centres}`, 'height R 18 L 18'];
    expect(judged(pair([...lenses, prism, ...ORDER], read)).verdict).toBe(verdict);
  });

  test.each([
    // In words the same: cross power turns 0.60 base in into 0.15 up or down.
    ['prism R 2 BO L 0', 'prism R 2 BO L 0', 'accept'],
    ['prism R 2 BO L 0', 'prism R 1.40 BO 0.15 BD L 0', 'accept'],
    ['prism R 2 BO L 0', 'prism R 1.30 BO 0.18 BD L 0', 'reject'],
  ] as const)('%s, read %s: %s', (ordered, prism, verdict) => {
    const lenses = ['R -1.50 -1.00 x 045', 'L -1.50'];
    expect(judged(pair([...lenses, ordered, ...ORDER], [...lenses, prism])).verdict).toBe(verdict);
  });
});

describe('where millimetres decide, prism of a lens without a centre to find counts as if of the stronger lens', () => {
  // 2.5 mm of -6.00 make 1.50.
  test.each([
    ['R 0 L 1.49 BO', 'accept'],
    ['R 0 L 1.51 BO', 'reject'],
    // 2 mm of the strong lens, and 0.25: 0.42 mm of it.
    ['R 1.20 BI L 0.25 BI', 'accept'],
    ['R 1.51 BI L 0', 'reject'],
  ] as const)('-6.00 and +0.25, prism %s: %s', (prism, verdict) => {
    const lenses = ['R -6.00', 'L +0.25'];
    expect(judged(pair([...lenses, ...ORDER], [...lenses, `prism ${prism}`])).verdict).toBe(verdict);
  });
});

test('centres that contradict the prism read beside them are never a plain accept', () => {
  // -3.00 with its centre 2 mm out makes 0.60 base in; 0 was read.
  const order = ['R -3.00', 'L -3.00', ...ORDER];
  const read = ['R -3.00', 'L -3.00', 'prism R 0 L 0', 'optical-centres R 33 L 31', 'height R 18 L 18'];
  const { verdict, reservations } = judged(pair(order, read));
  expect([verdict, ...reservations]).not.toEqual(['accept']);
});

test('the millimetres of the whole decide, with the true prism beside them', () => {
  const order = ['R -1.00', 'L -8.00', ...ORDER];
  const read = ['R -1.00', 'L -8.00', 'optical-centres R 35 L 31', 'height R 18 L 18'];
  const found = measureOf(pair(order, read), 'pd');
  expect([found.deviation, found.unit, found.outcome]).toEqual([4, 'mm', 'fail']);
  expect(found.beside).toEqual({ amount: 0.4, unit: 'prism' });
});
