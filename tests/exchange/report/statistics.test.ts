/** The statistics of the report against printed figures, against other libraries, and against other ways to the same figure. */
import { deviation, mean } from 'd3-array';
import fc from 'fast-check';
import { quantileSorted } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { mondayOf, weekOf } from '../../../exchange/report/calendar';
import { capabilityOf } from '../../../exchange/report/statistics/capability';
import { Counted } from '../../../exchange/report/statistics/counted';
import { differenceOf } from '../../../exchange/report/statistics/difference';
import { Frequency, REST } from '../../../exchange/report/statistics/named';
import { rateOf, Z95 } from '../../../exchange/report/statistics/rate';
import { Sample, together } from '../../../exchange/report/statistics/sample';
import { Within } from '../../../exchange/report/statistics/within';

describe('a rate', () => {
  // R. G. Newcombe, “Two-sided confidence intervals for the single proportion”, Statistics in Medicine 17 (1998), 857-872,
  // table I, score method without continuity correction (from memory).
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i in %i has the printed interval', (count, of, low, high) => {
    expect(rateOf(count, of)).toMatchObject({ low, high });
  });

  /** The end where the score test just does not reject, found by halving; the formula is the solution of this. */
  function endOf(count: number, of: number, upper: boolean): number {
    const observed = count / of;
    const isRejected = (p: number): boolean => Math.abs(observed - p) > Z95 * Math.sqrt((p * (1 - p)) / of);
    let [inside, outside] = [observed, upper ? 1 : 0];
    for (let step = 0; step < 60; step++) {
      const middle = (inside + outside) / 2;
      if (isRejected(middle)) outside = middle;
      else inside = middle;
    }
    return inside;
  }

  test('has the interval in which the score test does not reject', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.double({ min: 0, max: 1, noNaN: true }), (of, share) => {
        const count = Math.round(of * share);
        const { low, high, rate } = rateOf(count, of);
        expect(low).toBeCloseTo(endOf(count, of, false), 3);
        expect(high).toBeCloseTo(endOf(count, of, true), 3);
        expect(low as number).toBeLessThanOrEqual(rate as number);
        expect(high as number).toBeGreaterThanOrEqual(rate as number);
      }),
      { seed: 1927, numRuns: 300 },
    );
  });

  test('of nothing is none, and thirty are no longer few', () => {
    expect(rateOf(0, 0)).toEqual({ count: 0, of: 0, rate: null, low: null, high: null, small: true });
    expect(rateOf(3, 29).small).toBe(true);
    expect(rateOf(3, 30).small).toBe(false);
  });
});

const figures = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 2, maxLength: 900 });

const sampleOf = (values: readonly number[]): Sample => {
  const sample = new Sample();
  for (const value of values) sample.add(value);
  return sample;
};

test('a sample that comes in pieces has the mean and spread that d3-array gives for the whole', () => {
  fc.assert(
    fc.property(figures, (values) => {
      const moments = sampleOf(values).moments();
      expect(moments?.count).toBe(values.length);
      expect(moments?.mean).toBeCloseTo(mean(values) as number, 9);
      expect(moments?.sd).toBeCloseTo(deviation(values) as number, 9);
      expect([moments?.least, moments?.most]).toEqual([Math.min(...values), Math.max(...values)]);
    }),
    { seed: 7, numRuns: 100 },
  );
  expect(new Sample().moments()).toBeNull();
  expect(sampleOf([4]).moments()).toMatchObject({ count: 1, mean: 4, sd: null });
});

test('samples put together are as one', () => {
  fc.assert(
    fc.property(figures, figures, (some, others) => {
      const both = together([some, others].map((one) => sampleOf(one).moments()).filter((one) => one !== null));
      expect(both?.mean).toBeCloseTo(mean([...some, ...others]) as number, 9);
      expect(both?.sd).toBeCloseTo(deviation([...some, ...others]) as number, 9);
    }),
    { seed: 8, numRuns: 100 },
  );
});

test('quantiles of counted figures are those that simple-statistics gives for the list', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 1, maxLength: 400 }), (hundredths) => {
      const counted = new Counted(0.01);
      for (const one of hundredths) counted.add(one / 100);
      const sorted = hundredths.toSorted((a, b) => a - b);
      const shares = [0, 0.05, 0.25, 0.5, 0.95, 1];
      const found = counted.quantiles(shares) ?? [];
      for (const [at, share] of shares.entries()) expect(found[at]).toBeCloseTo(quantileSorted(sorted, share) / 100, 9);
    }),
    { seed: 9, numRuns: 300 },
  );
  expect(new Counted(0.01).quantiles([0.5])).toBeNull();
});

test('bars hold every figure once, and exactly the limit is inside', () => {
  const counted = new Counted(0.01);
  for (const value of [-9, -1, -0.99, 0, 0.14, 0.15, 1, 1.01, 9]) counted.add(value);
  const bins = counted.bins(-13 / 7, 13 / 7, 2 / 7);
  const within = (from: number, to: number): number =>
    bins.filter((bin) => bin.from > from - 0.01 && bin.to < to + 0.01).reduce((sum, { count }) => sum + count, 0);
  expect(bins).toHaveLength(13);
  expect(bins.reduce((sum, { count }) => sum + count, 0)).toBe(9);
  expect(within(-1, 1)).toBe(6);
  expect(within(-1 / 7, 1 / 7)).toBe(2);
  expect([bins[0]?.count, bins.at(-1)?.count]).toEqual([1, 1]);
});

describe('capability', () => {
  // By hand: 1 / (3 x 0.25) and 0.9 / (3 x 0.25); the interval 1.2 ± 1.96 x sqrt(1/450 + 1.44/98).
  test('of shares with both limits', () => {
    const found = capabilityOf({ count: 50, mean: -0.1, sd: 0.25 }, 'both');
    expect(found).toMatchObject({ pp: 1.3333, ppk: 1.2, small: true });
    expect(found?.low).toBeCloseTo(0.9451, 3);
    expect(found?.high).toBeCloseTo(1.4549, 3);
  });

  test('of sizes has one side, and none where nothing spreads', () => {
    expect(capabilityOf({ count: 400, mean: 0.4, sd: 0.1 }, 'above')).toMatchObject({ pp: null, ppk: 2, small: false });
    expect(capabilityOf({ count: 400, mean: 0.4, sd: 0 }, 'both')).toBeNull();
    expect(capabilityOf({ count: 1, mean: 0.4, sd: null }, 'both')).toBeNull();
  });

  // Values of the normal distribution: Ppk 1 leaves 0.135 % beyond the nearer limit (any table: 1 - 0.99865).
  test('of 1 puts the nearer limit three standard deviations from the mean', () => {
    const { ppk } = capabilityOf({ count: 1000, mean: 0.25, sd: 0.25 }, 'both') ?? {};
    expect(ppk).toBe(1);
  });
});

test('the difference of two means has the interval of unequal spreads', () => {
  // By hand: sqrt(0.04/100 + 0.09/225) = 0.028284.
  const found = differenceOf({ count: 100, mean: 0.5, sd: 0.2 }, { count: 225, mean: 0.3, sd: 0.3 });
  expect(found).toMatchObject({ difference: 0.2, low: 0.1446, high: 0.2554, small: false });
  expect(differenceOf({ count: 1, mean: 0.5, sd: null }, { count: 40, mean: 0, sd: 1 })).toEqual({
    difference: 0.5,
    low: null,
    high: null,
    small: true,
  });
});

test('the spread within pairs is the root of the mean squared difference over two', () => {
  // For pairs alone the pooled variance is the sum of squared differences over 2n (Bland and Altman 1996, from memory).
  const pairs: readonly (readonly [number, number])[] = [
    [0.02, -0.02],
    [0.1, 0.07],
    [0, 0.05],
  ];
  const within = new Within();
  for (const pair of pairs) within.add(pair);
  const sd = Math.sqrt(pairs.reduce((sum, [a, b]) => sum + (a - b) ** 2, 0) / (2 * pairs.length));
  const found = within.result();
  expect(found).toMatchObject({ groups: 3, readings: 6, small: true });
  expect(found?.sd).toBeCloseTo(sd, 4);
  expect(found?.limit).toBeCloseTo(1.96 * Math.SQRT2 * sd, 3);
});

describe('weeks', () => {
  // Examples of ISO 8601 as widely given (from memory).
  test.each([
    ['2005-01-01', '2004-W53'],
    ['2005-01-02', '2004-W53'],
    ['2005-12-31', '2005-W52'],
    ['2007-01-01', '2007-W01'],
    ['2008-12-29', '2009-W01'],
    ['2010-01-03', '2009-W53'],
    ['2026-11-24', '2026-W48'],
  ])('%s is in %s', (day, week) => {
    expect(weekOf(day)).toBe(week);
  });

  test('begin on Monday, and the first holds the fourth of January', () => {
    for (let year = 1960; year < 2100; year++) {
      expect(weekOf(`${year}-01-04`)).toBe(`${year}-W01`);
      const monday = mondayOf(`${year}-07-01`);
      expect(new Date(`${monday}T00:00:00Z`).getUTCDay()).toBe(1);
    }
  });
});

test('names beyond five hundred are counted together', () => {
  const frequency = new Frequency();
  for (let at = 0; at < 2000; at++) frequency.add(`reason ${at}`);
  const ranked = frequency.ranked();
  expect(ranked).toHaveLength(501);
  expect(ranked[0]).toEqual({ name: REST, count: 1500 });
});
