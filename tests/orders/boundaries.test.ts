/**
 * Every row of every table of every set, walked through the whole evaluation: an order and a reading as text in, an
 * outcome out. At both ends of each band, exactly on the limit and a thousandth past it, on either side.
 */
import { describe, expect, test } from 'vitest';
import { toleranceSets } from '../../orders';
import {
  type Banded,
  type LensClass,
  type Limit,
  PRINTED,
  type Printed,
  type PrintedAxis,
  type PrintedPower,
} from './support/printed';
import { type Case, exactly, lensText, sphere, wrongOnes } from './support/walk';

const STEP = 0.001;
const FAR = 25;

const amountOf = (limit: Exclude<Limit, null>, of: number): number =>
  typeof limit === 'number' ? limit : (Number.parseFloat(limit) / 100) * of;

/** The ends of a band: the first hundredth in it and the last; an open band is looked at a little way in. */
const ends = (above: number, end: number): readonly number[] =>
  Number.isFinite(end) ? [above === 0 ? 0 : exactly(above + 0.01), end] : [exactly(above + 0.01), above + 3];

const bandsOf = (list: readonly number[]): readonly (readonly [number, number])[] =>
  list.map((end, at) => [list[at - 1] ?? 0, end]);

/** Lines that make the lens a member of its class; only the power, cylinder, axis and add are looked at. */
const CLASS: Readonly<Record<LensClass, readonly string[]>> = {
  'single vision': ['design single-vision', 'supply uncut'],
  progressive: ['design progressive', 'add +2.00', 'supply uncut'],
};

const outcomes = (amount: number): readonly (readonly [deviation: number, outcome: 'pass' | 'fail'])[] =>
  [amount, amount - STEP, amount + STEP].flatMap((size): (readonly [number, 'pass' | 'fail'])[] => {
    const outcome = size <= amount ? 'pass' : 'fail';
    return [
      [size, outcome],
      [-size, outcome],
    ];
  });

/** All lenses at the corners of one cell, both signs; a cylinder beyond twice the power has another strongest meridian. */
function corners(power: readonly [number, number], cylinder: readonly [number, number], sphereToo: boolean) {
  const cylinders = ends(...cylinder).map((one) => (one === 0 && !sphereToo ? 0.01 : one));
  return ends(...power).flatMap((strongest) =>
    cylinders
      .filter((one) => one <= 2 * strongest)
      .flatMap((one) => [1, -1].map((sign) => ({ strongest: sign * strongest, other: sign * (strongest - one) }))),
  );
}

function* powerCases({ set }: Printed, table: PrintedPower, lens: LensClass): Generator<Case> {
  for (const [at, power] of bandsOf(table.rows.map(([end]) => end)).entries()) {
    const [, meridian, ...limits] = table.rows[at] as PrintedPower['rows'][number];
    for (const [column, cylinder] of bandsOf(table.columns).entries()) {
      const limit = limits[column] ?? null;
      for (const { strongest, other } of corners(power, cylinder, table.sphereToo)) {
        const ordered = exactly(Math.abs(strongest - other));
        const one = { set, lens: CLASS[lens], row: `row ${at + 1}, column ${column + 1}` };
        const amount = amountOf(meridian as Exclude<Limit, null>, Math.abs(strongest));
        for (const [deviation, outcome] of outcomes(amount)) {
          // Both meridians move together, so the cylinder stays as it is.
          const read = [strongest + deviation, other + deviation] as const;
          yield { ...one, quantity: 'power', meridian: 1, ordered: [strongest, other], read, outcome };
          if (table.each)
            yield {
              ...one,
              quantity: 'power',
              meridian: 2,
              ordered: [strongest, other],
              read,
              // A share is taken of the meridian itself.
              outcome:
                Math.abs(deviation) <= amountOf(meridian as Exclude<Limit, null>, Math.abs(other)) + 1e-9
                  ? 'pass'
                  : 'fail',
            };
        }
        if (limit === null) continue;
        for (const [deviation, outcome] of outcomes(amountOf(limit, ordered))) {
          // More or less cylinder; a lens read with the opposite cylinder is another matter.
          if (ordered + deviation <= 0) continue;
          const way = other === strongest ? -1 : Math.sign(other - strongest);
          const read = [strongest, strongest + way * (ordered + deviation)] as const;
          yield { ...one, quantity: 'cylinder', meridian: null, ordered: [strongest, other], read, outcome };
        }
      }
    }
  }
}

function* axisCases({ set }: Printed, table: PrintedAxis, lens: LensClass): Generator<Case> {
  for (const [at, [above, end]] of bandsOf(table.rows.map(([one]) => one)).entries()) {
    const limit = (table.rows[at] as PrintedAxis['rows'][number])[1];
    const cylinders = ends(above, end).map((one) => (one === 0 ? 0.01 : one));
    // Where the end of the first band is outside it, the second begins there.
    const inBand = table.firstEndOutside
      ? cylinders.map((one) => (at === 0 && one === end ? exactly(one - 0.01) : one)).concat(at === 1 ? [above] : [])
      : cylinders;
    for (const cylinder of inBand) {
      for (const axis of [2, 90, 179, 180]) {
        const turns = limit === null ? [0, 45, 90] : [limit, -limit, limit + 1, -limit - 1, 90];
        for (const turn of turns) {
          const outcome = limit === null || Math.abs(turn) <= limit ? 'pass' : 'fail';
          const powers = [-3, -3 - cylinder] as const;
          yield {
            set,
            lens: CLASS[lens],
            row: `axis row ${at + 1}, cylinder ${cylinder}`,
            quantity: 'axis',
            meridian: null,
            ordered: powers,
            read: powers,
            axis,
            turn,
            outcome,
          };
        }
      }
    }
  }
}

function* addCases({ set }: Printed, table: Banded, lens: LensClass): Generator<Case> {
  for (const [at, [above, end]] of bandsOf(table.rows.map(([one]) => one)).entries()) {
    const limit = (table.rows[at] as Banded['rows'][number])[1] as number;
    for (const add of ends(above, end).map((one) => (one === 0 ? 0.5 : one))) {
      for (const [deviation, outcome] of outcomes(limit)) {
        const design = lens === 'progressive' ? 'design progressive' : 'design bifocal flat-top 28';
        yield {
          set,
          lens: [design, `add ${sphere(add)}`, 'supply uncut'],
          row: `add row ${at + 1}, add ${add}`,
          quantity: 'add',
          meridian: null,
          ordered: [-1, -1],
          read: [-1, -1],
          more: [`add ${sphere(add + deviation)}`],
          outcome,
        };
      }
    }
  }
}

describe.each(PRINTED.map((one) => [one.set, one] as const))('%s', (_, printed) => {
  const walk = <T extends { readonly lenses: readonly LensClass[] }>(
    tables: readonly T[],
    cases: (of: Printed, table: T, lens: LensClass) => Iterable<Case>,
  ): readonly Case[] => tables.flatMap((table) => table.lenses.flatMap((lens) => [...cases(printed, table, lens)]));

  test('powers and cylinders, in either form', () => {
    const cases = walk(printed.power, powerCases);
    expect(cases.length).toBeGreaterThan(100);
    expect(wrongOnes(cases)).toEqual([]);
  });

  test('axes', () => {
    const cases = walk(printed.axis, axisCases);
    expect(cases.length).toBeGreaterThan(50);
    expect(wrongOnes(cases)).toEqual([]);
  });

  test('adds', () => {
    const cases = walk(printed.add, addCases);
    expect(cases.length > 0).toBe(printed.add.length > 0);
    expect(wrongOnes(cases)).toEqual([]);
  });
});

test('every cell of a power table is reached', () => {
  for (const { power } of PRINTED) {
    for (const table of power) {
      for (const [at, row] of bandsOf(table.rows.map(([end]) => end)).entries()) {
        for (const [column, cylinder] of bandsOf(table.columns).entries()) {
          // No lens has both meridians within 3.00 D and a cylinder above 6.00 D.
          const canBe = cylinder[0] < 2 * Math.min(row[1], FAR);
          const count = corners(row, cylinder, table.sphereToo).length;
          expect([at, column, count > 0]).toEqual([at, column, canBe]);
        }
      }
    }
  }
});

test('every built-in set is walked', () => {
  expect(PRINTED.map(({ set }) => set).sort()).toEqual(toleranceSets.map(({ id }) => id).sort());
});

describe('0.12, 0.125 and 0.13 are three figures', () => {
  // Printed 0.12: ISO 21987 meridian; printed 0.13: Z80.1-2015 meridian.
  test.each([
    ['iso-21987-2017', 0.12, 'pass'],
    ['iso-21987-2017', 0.125, 'fail'],
    ['iso-21987-2017', 0.13, 'fail'],
    ['z80.1-2015', 0.12, 'pass'],
    ['z80.1-2015', 0.125, 'pass'],
    ['z80.1-2015', 0.13, 'pass'],
    ['z80.1-2015', 0.131, 'fail'],
    ['nj-13-35-5.2', 0.125, 'fail'],
  ] as const)('%s, off by %s: %s', (set, off, outcome) => {
    const cases = [off, -off].map(
      (deviation): Case => ({
        set,
        lens: CLASS['single vision'],
        row: 'three figures',
        quantity: 'power',
        meridian: 1,
        ordered: [-2, -2],
        read: [-2 + deviation, -2 + deviation],
        outcome,
      }),
    );
    expect(wrongOnes(cases)).toEqual([]);
    expect(lensText([-2, -2], 180, 'minus')).toBe('-2.00');
  });
});
