import { describe, expect, it } from 'vitest';
import { type Band, focimeterLimits, safetyThicknesses, type ToleranceSet, toleranceSets } from '../../tables';
import { band } from './support/as-printed';

describe.each(toleranceSets.map((set) => ({ id: set.id, set })))('bands of $id', ({ set }) => {
  it.each(ladders(set))('are in one piece: $name', ({ bands }) => {
    expect(seamsOf(bands)).toEqual([]);
    expect(startOf(bands)).toBe(0);
    expect(isOpenAbove(bands)).toBe(true);
  });
});

it.each([
  { name: 'vertex power', bands: focimeterLimits.vertexPower.map((row) => row.band) },
  { name: 'prism', bands: focimeterLimits.prism.map((row) => row.band) },
  ...focimeterLimits.rounding.map((table) => ({
    name: `step ${table.step}`,
    bands: table.rows.map((row) => row.band),
  })),
])('bands of the focimeter limits are in one piece: $name', ({ bands }) => {
  expect(seamsOf(bands)).toEqual([]);
  expect(startOf(bands)).toBe(0);
  expect(isOpenAbove(bands)).toBe(true);
});

it('the safety thicknesses of one rating cover every power once', () => {
  const bands = safetyThicknesses.filter((row) => row.rating === 'basic').map((row) => row.power ?? {});
  expect(seamsOf(bands)).toEqual([]);
  expect(bands[0]).not.toHaveProperty('atLeast');
  expect(isOpenAbove(bands)).toBe(true);
});

it.each<{ name: string; bands: Band[]; seams: number }>([
  { name: 'a gap', bands: [{ atLeast: 0, atMost: 2 }, { above: 2.5 }], seams: 1 },
  { name: 'an overlap at the seam', bands: [{ atLeast: 0, atMost: 2 }, { atLeast: 2 }], seams: 1 },
  { name: 'a seam that belongs to neither', bands: [{ atLeast: 0, below: 2 }, { above: 2 }], seams: 1 },
  { name: 'two lower ends', bands: [{ atLeast: 0, above: 0, atMost: 2 }, { above: 2 }], seams: 1 },
  { name: 'an open band in the middle', bands: [{ atLeast: 0 }, { above: 2 }], seams: 1 },
  { name: 'nothing wrong', bands: [{ atLeast: 0, below: 2 }, { atLeast: 2 }], seams: 0 },
])('the check itself sees $name', ({ bands, seams }) => {
  expect(seamsOf(bands)).toHaveLength(seams);
});

interface Ladder {
  readonly name: string;
  readonly bands: readonly Band[];
}

/** Every run of bands in a set that a value has to fall into exactly once. */
function ladders(set: ToleranceSet): Ladder[] {
  return [
    ...set.power.map((table) => ({ name: `power, ${table.lenses}`, bands: table.rows.map((row) => row.power) })),
    ...set.power.flatMap((table) =>
      table.rows.map((row) => ({
        name: `cylinder beside power ${band(row.power)}, ${table.lenses}`,
        bands: row.cylinder.map((cell) => cell.cylinder),
      })),
    ),
    ...set.axis.map((table) => ({ name: `axis, ${table.lenses}`, bands: table.rows.map((row) => row.cylinder) })),
    ...(set.add ?? []).map((table) => ({ name: `add, ${table.lenses}`, bands: table.rows.map((row) => row.add) })),
    ...(set.lensPrism ?? []).flatMap((table) =>
      [...new Set(table.rows.map((row) => row.component))].map((component) => ({
        name: `prism of one lens, ${component}, ${table.lenses}`,
        bands: table.rows.filter((row) => row.component === component).map((row) => row.orderedPrism),
      })),
    ),
    ...(set.pairPrism ?? []).flatMap((table) => {
      const name = `prism of a pair, ${table.component}, ${table.lenses}`;
      const ordered = distinct(table.rows.map((row) => row.orderedPrism ?? { atLeast: 0 }));
      const powers = ordered.map((outer) => ({
        name: `${name}, ordered ${band(outer)}`,
        bands: table.rows
          .filter((row) => band(row.orderedPrism ?? { atLeast: 0 }) === band(outer))
          .map((row) => row.power),
      }));
      return [{ name, bands: ordered }, ...powers];
    }),
  ];
}

function distinct(bands: readonly Band[]): Band[] {
  return [...new Map(bands.map((one) => [band(one), one])).values()];
}

/** What is wrong between neighbouring bands, and inside each band. */
function seamsOf(bands: readonly Band[]): string[] {
  const malformed = bands.filter(
    ({ atLeast, above, atMost, below }) =>
      (atLeast !== undefined && above !== undefined) ||
      (atMost !== undefined && below !== undefined) ||
      (atLeast ?? above ?? Number.NEGATIVE_INFINITY) >= (atMost ?? below ?? Number.POSITIVE_INFINITY),
  );
  const seams = bands.slice(1).flatMap((upper, at) => {
    const lower = bands[at] ?? {};
    const meets =
      (lower.atMost !== undefined && lower.atMost === upper.above) ||
      (lower.below !== undefined && lower.below === upper.atLeast);
    return meets ? [] : [`${band(lower)} then ${band(upper)}`];
  });
  return [...malformed.map((one) => `malformed ${band(one)}`), ...seams];
}

function startOf(bands: readonly Band[]): number | undefined {
  return bands[0]?.atLeast ?? bands[0]?.above;
}

function isOpenAbove(bands: readonly Band[]): boolean {
  const last = bands.at(-1);
  return last !== undefined && last.atMost === undefined && last.below === undefined;
}
