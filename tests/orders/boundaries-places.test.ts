/** The same walk along the limits of prism, of places and of shapes: every row of every set, on the limit and past it. */
import { describe, expect, test } from 'vitest';
import { type LensClass, PRINTED, type Printed, type PrintedLensPrism, type PrintedPair } from './support/printed';
import { exactly, type Pair, sphere, wrongPairs } from './support/walk';

const STEP = 0.001;
const FRAME = 'frame A 50 B 40 DBL 18';
const PROGRESSIVE = ['design progressive', 'add +2.00', 'pd R 31.5 L 31.5', 'height 20'];

/** The first and the last power of a band, or one a little way into an open one. */
const powersOf = (above: number, end: number): readonly number[] =>
  [above === 0 ? 0.25 : exactly(above + 0.01), Number.isFinite(end) ? end : above + 3].flatMap((one) => [one, -one]);

const sides = (limit: number): readonly (readonly [size: number, outcome: 'pass' | 'fail'])[] => [
  [limit, 'pass'],
  [exactly(limit + STEP), 'fail'],
];

const prismText = (amount: number, plus: string, minus: string): string =>
  exactly(amount) === 0 ? '0' : `${exactly(Math.abs(amount))} ${amount > 0 ? plus : minus}`;

/** Prism before the right lens in one direction, the ordered one and so much more of it; none before the left one. */
const BASES = { horizontal: ['BI', 'BO'], vertical: ['BU', 'BD'], any: ['BI', 'BO'] } as const;

const orderedAmounts = (above: number, end: number): readonly number[] => [
  above === 0 ? 0 : exactly(above + 0.01),
  Number.isFinite(end) ? end : above + 2,
];

function* pairCases({ set }: Printed, table: PrintedPair, lens: LensClass): Generator<Pair> {
  const [plus, minus] = BASES[table.direction];
  for (const [at, row] of table.rows.entries()) {
    for (const power of powersOf(row.above, row.end)) {
      for (const amount of row.ordered ? orderedAmounts(...row.ordered) : [0, 3]) {
        const prism = amount === 0 ? [] : [`prism R ${prismText(amount, plus, minus)} L 0`];
        const design = lens === 'progressive' ? PROGRESSIVE : ['design single-vision', 'pd 63', 'height 20'];
        const order = [`R ${sphere(power)}`, `L ${sphere(power / 2)}`, ...design, ...prism, FRAME];
        const one = { set, row: `${table.direction} row ${at + 1}, ordered ${amount}`, order };
        const size = Math.abs(power);
        const limit = row.mm === undefined ? (row.prism ?? 0) + ((row.shift ?? 0) / 10) * size : (row.mm / 10) * size;
        const eachEye = row.mm !== undefined && lens === 'progressive' && table.direction === 'horizontal';
        for (const [error, outcome] of sides(exactly(limit))) {
          for (const way of [1, -1]) {
            const reading = [`prism R ${prismText(amount + way * error, plus, minus)} L 0`];
            const quantities = [`prism-${table.direction}`] as Pair['quantities'];
            // The prism of one lens may be limited by itself as well.
            yield { ...one, reading, quantities, eye: eachEye ? 'R' : null, outcome };
          }
        }
        if (row.mm === undefined) continue;
        for (const [error, outcome] of sides(row.mm)) {
          for (const way of [1, -1]) yield* inMillimetres(one, table.direction, lens, way * error, outcome);
        }
      }
    }
  }
}

/** Where a row is in millimetres, the places themselves are read. A fitting height is no place of prism. */
function* inMillimetres(
  one: Pick<Pair, 'set' | 'row' | 'order'>,
  direction: PrintedPair['direction'],
  lens: LensClass,
  error: number,
  outcome: Pair['outcome'],
): Generator<Pair> {
  if (direction === 'horizontal' && lens === 'progressive')
    yield { ...one, reading: [`pd R ${exactly(31.5 + error)} L 31.5`], quantities: ['pd'], eye: 'R', outcome };
  else if (direction === 'horizontal')
    yield { ...one, reading: [`pd ${exactly(63 + error)}`], quantities: ['pd'], eye: null, outcome };
  else if (lens === 'single vision') {
    const reading = [`height R ${exactly(20 + error)} L 20`];
    yield { ...one, reading, quantities: ['height-difference'], eye: null, outcome };
  }
}

function* lensCases({ set }: Printed, table: PrintedLensPrism, lens: LensClass): Generator<Pair> {
  const [plus, minus] = BASES[table.direction];
  for (const [at, [end, amount, perDioptre]] of table.rows.entries()) {
    const above = table.rows[at - 1]?.[0] ?? 0;
    for (const ordered of orderedAmounts(above, end)) {
      for (const power of [0.25, -2, 3.3, -3.31, 6, -12]) {
        const prism = ordered === 0 ? [] : [`prism R ${prismText(ordered, plus, minus)} L 0`];
        const design = lens === 'progressive' ? [...PROGRESSIVE, 'thinning none'] : ['design single-vision', 'pd 63'];
        const frame = table.supply === 'glazed' ? FRAME : `supply ${table.supply}`;
        const order = [`R ${sphere(power)}`, 'L -1.00', ...design, ...prism, frame];
        const shifted = ((table.orMm ?? 0) / 10) * Math.abs(power);
        const limit = exactly(Math.max(amount + perDioptre * Math.abs(power), shifted));
        for (const [error, outcome] of sides(limit)) {
          for (const way of [1, -1]) {
            yield {
              set,
              row: `one lens, ${table.direction} row ${at + 1}, ordered ${ordered}, power ${power}`,
              order,
              reading: [`prism R ${prismText(ordered + way * error, plus, minus)} L 0`],
              quantities: [table.direction === 'any' ? 'prism' : `prism-${table.direction}`],
              eye: 'R',
              outcome,
            };
          }
        }
      }
    }
  }
}

const BIFOCAL = ['R -1.00', 'L -1.00', 'add +2.00', 'pd 63 near R 30 L 30', 'height 17', 'design bifocal flat-top 28'];
const ASKED = ['base-curve 4.00', 'thickness centre 2.0'];
const FITTED = ['R -1.00', 'L -1.00', ...PROGRESSIVE];

interface Item {
  readonly order: readonly string[];
  readonly quantity: Pair['quantities'][number];
  readonly eye: 'R' | null;
  /** The line of the reading when the figure is off by so much. */
  readonly line: (error: number) => string;
  /** Which way it can be off; a tilt and a warp have no sign. */
  readonly ways: readonly number[];
}

const BOTH = [1, -1];

/** How each limit without bands is read. */
const ITEMS: Readonly<Record<keyof Printed['plain'], Item>> = {
  segmentHeight: {
    order: BIFOCAL,
    quantity: 'height',
    eye: 'R',
    line: (error) => `height R ${exactly(17 + error)} L 17`,
    ways: BOTH,
  },
  segmentHeightDifference: {
    order: BIFOCAL,
    quantity: 'height-difference',
    eye: null,
    line: (error) => `height R ${exactly(17 + error / 2)} L ${exactly(17 - error / 2)}`,
    ways: BOTH,
  },
  nearPd: {
    order: BIFOCAL,
    quantity: 'near-pd',
    eye: null,
    line: (error) => `pd 63 near ${exactly(60 + error)}`,
    ways: BOTH,
  },
  segmentTilt: {
    order: BIFOCAL,
    quantity: 'segment-tilt',
    eye: 'R',
    line: (error) => `segment R 28 tilt ${error}`,
    ways: [1],
  },
  segmentSize: {
    order: BIFOCAL,
    quantity: 'segment-width',
    eye: 'R',
    line: (error) => `segment R ${exactly(28 + error)} L 28`,
    ways: BOTH,
  },
  segmentSizeDifference: {
    order: BIFOCAL,
    quantity: 'segment-width-difference',
    eye: null,
    line: (error) => `segment R ${exactly(28 + error / 2)} L ${exactly(28 - error / 2)}`,
    ways: BOTH,
  },
  fittingHeight: {
    order: FITTED,
    quantity: 'height',
    eye: 'R',
    line: (error) => `height R ${exactly(20 + error)} L 20`,
    ways: BOTH,
  },
  fittingHeightDifference: {
    order: FITTED,
    quantity: 'height-difference',
    eye: null,
    line: (error) => `height R ${exactly(20 + error / 2)} L ${exactly(20 - error / 2)}`,
    ways: BOTH,
  },
  fittingHorizontal: {
    order: FITTED,
    quantity: 'pd',
    eye: 'R',
    line: (error) => `pd R ${exactly(31.5 + error)} L 31.5`,
    ways: BOTH,
  },
  markTilt: {
    order: FITTED,
    quantity: 'segment-tilt',
    eye: 'R',
    line: (error) => `segment R 0 tilt ${error}`,
    ways: [1],
  },
  baseCurve: {
    order: [...BIFOCAL, ...ASKED],
    quantity: 'base-curve',
    eye: 'R',
    line: (error) => `base-curve R ${exactly(4 + error)} L 4.00`,
    ways: BOTH,
  },
  centreThickness: {
    order: [...BIFOCAL, ...ASKED],
    quantity: 'centre-thickness',
    eye: 'R',
    line: (error) => `thickness R centre ${exactly(2 + error)} L centre 2.0`,
    ways: BOTH,
  },
  warp: {
    order: BIFOCAL,
    quantity: 'warp',
    eye: 'R',
    line: (error) => `clock R +4.00 @ 090 / +${(4 + error).toFixed(3)} @ 180`,
    ways: [1],
  },
};

function* plainCases({ set, plain }: Printed): Generator<Pair> {
  const supply = set.startsWith('iso-8980') ? 'supply uncut' : FRAME;
  for (const [key, limit] of Object.entries(plain) as [keyof Printed['plain'], number][]) {
    const { order, quantity, eye, line, ways } = ITEMS[key];
    for (const [error, outcome] of sides(limit)) {
      for (const way of ways)
        yield {
          set,
          row: key,
          order: [...order, supply],
          reading: [line(way * error)],
          quantities: [quantity],
          eye,
          outcome,
        };
    }
  }
}

describe.each(PRINTED.map((one) => [one.set, one] as const))('%s', (_, printed) => {
  test('prism and places of a pair', () => {
    const cases = printed.pair.flatMap((table) => table.lenses.flatMap((lens) => [...pairCases(printed, table, lens)]));
    expect(cases.length > 0).toBe(printed.pair.length > 0);
    expect(wrongPairs(cases)).toEqual([]);
  });

  test('prism of one lens', () => {
    const cases = printed.lensPrism.flatMap((table) =>
      table.lenses.flatMap((lens) => [...lensCases(printed, table, lens)]),
    );
    expect(cases.length > 0).toBe(printed.lensPrism.length > 0);
    expect(wrongPairs(cases)).toEqual([]);
  });

  test('heights, distances, segments, curves, thicknesses', () => {
    const cases = [...plainCases(printed)];
    expect(cases.length).toBeGreaterThanOrEqual(2 * Object.keys(printed.plain).length);
    expect(wrongPairs(cases)).toEqual([]);
  });

  test('what the set does not limit is never inside or outside', () => {
    const keys = (Object.keys(ITEMS) as (keyof Printed['plain'])[]).filter((key) => printed.plain[key] === undefined);
    // A height of a pair and a place that no table limits are not measured at all; the rest is left unjudged.
    for (const key of keys) {
      const { order, quantity, eye, line } = ITEMS[key];
      const supply = printed.set.startsWith('iso-8980') ? 'supply uncut' : FRAME;
      const pair = {
        set: printed.set,
        row: key,
        order: [...order, supply],
        reading: [line(9)],
        quantities: [quantity],
        eye,
      };
      expect(wrongPairs([{ ...pair, outcome: 'pass' }])).toHaveLength(1);
      expect(wrongPairs([{ ...pair, outcome: 'fail' }])).toHaveLength(1);
    }
  });
});

describe('which power chooses the row', () => {
  // Along the direction of the error, sphere + cylinder times the squared sine: a text on GB 13511 gives the formula.
  test.each([
    // -1.00 along 90 and -4.00 along 180: vertically 0.33 prism dioptres, horizontally 2.5 mm.
    [['R -1.00 -3.00 x 090', 'L -1.00'], ['prism R 0.331 BU L 0'], 'prism-vertical', 'fail'],
    [['R -1.00 -3.00 x 090', 'L -1.00'], ['pd 65.5'], 'pd', 'pass'],
    [['R -1.00 -3.00 x 090', 'L -1.00'], ['pd 65.51'], 'pd', 'fail'],
    // Turned by 90 the directions change places.
    [['R -1.00 -3.00 x 180', 'L -1.00'], ['height R 21 L 20'], 'height-difference', 'pass'],
    [['R -1.00 -3.00 x 180', 'L -1.00'], ['height R 21.01 L 20'], 'height-difference', 'fail'],
    [['R -1.00 -3.00 x 180', 'L -1.00'], ['prism R 0.671 BI L 0'], 'prism-horizontal', 'fail'],
    // At 45 degrees half of the cylinder counts: -2.50 either way, below both thresholds.
    [['R -1.00 -3.00 x 045', 'L -1.00'], ['prism R 0.67 BI L 0'], 'prism-horizontal', 'pass'],
    [['R -1.00 -3.00 x 045', 'L -1.00'], ['prism R 0.34 BU L 0'], 'prism-vertical', 'fail'],
    // The stronger lens of the two decides, whichever eye it stands before.
    [['R -1.00', 'L +4.00'], ['pd 65.5'], 'pd', 'pass'],
    [['R +4.00', 'L -1.00'], ['pd 60.4'], 'pd', 'fail'],
  ] as const)('%s, %s', (lenses, reading, quantity, outcome) => {
    const order = [...lenses, 'design single-vision', 'pd 63', 'height 20', FRAME];
    expect(
      wrongPairs([{ set: 'z80.1-2015', row: 'row', order, reading, quantities: [quantity], eye: null, outcome }]),
    ).toEqual([]);
  });
});
