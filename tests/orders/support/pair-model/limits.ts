/** Limits of the printed tables, looked up once more for the oracle; see `printed.ts`. */
import { type Limit, PRINTED, type Printed, type PrintedPair } from '../printed';
import { strongest, type Toric } from './lens';

export type Class = 'single vision' | 'progressive';

/** Null stands for a limit that a set says it does not define; undefined for none at all. */
export type Amount = number | null | undefined;

const NOISE = 1e-6;
const upTo = (size: number, end: number): boolean => size <= end + NOISE;

export function printedSet(set: string): Printed {
  const found = PRINTED.find((one) => one.set === set);
  if (!found) throw new Error(`no printed set ${set}`);
  return found;
}

const forClass = <T extends { readonly lenses: readonly Class[] }>(tables: readonly T[], of: Class): T | undefined =>
  tables.find(({ lenses }) => lenses.includes(of));

const amountOf = (limit: Limit | undefined, percentOf: number): Amount =>
  typeof limit === 'string' ? (Number.parseFloat(limit) / 100) * Math.abs(percentOf) : limit;

export interface PowerLimits {
  readonly each: boolean;
  /** Of one meridian, by its ordered power. */
  readonly meridian: (power: number) => Amount;
  readonly cylinder: Amount;
}

export function powerLimits(printed: Printed, of: Class, ordered: Toric): PowerLimits | null {
  const table = forClass(printed.power, of);
  const row = table?.rows.find(([end]) => upTo(strongest(ordered), end));
  if (!table || !row) return null;
  const [, meridian, ...columns] = row;
  const size = Math.abs(ordered.cylinder);
  const column = table.columns.findIndex((end) => upTo(size, end));
  const isLimited = size > 0 || table.sphereToo;
  return {
    each: table.each,
    meridian: (power) => amountOf(meridian, power),
    cylinder: isLimited ? amountOf(columns[column], size) : undefined,
  };
}

export function axisLimit(printed: Printed, of: Class, cylinder: number): Amount {
  const table = forClass(printed.axis, of);
  const size = Math.abs(cylinder);
  const row = table?.rows.find(([end], at) =>
    at === 0 && table.firstEndOutside ? size < end - NOISE : upTo(size, end),
  );
  return row?.[1];
}

export const addLimit = (printed: Printed, of: Class, add: number): Amount =>
  forClass(printed.add, of)?.rows.find(([end]) => upTo(add, end))?.[1];

export interface PairRow {
  /** Prism, with the shift worked in; null for a row in millimetres. */
  readonly prism: number | null;
  readonly mm: number | null;
}

/**
 * The row by the power along the direction of the stronger lens as ordered, and by the larger ordered prism.
 * `isOnEdge` tells a power so close to the end of a row that its last digit would decide.
 */
export function pairRow(
  printed: Printed,
  of: Class,
  direction: PrintedPair['direction'],
  power: number,
  prism: number,
): (PairRow & { readonly isOnEdge: boolean }) | null {
  const table = printed.pair.find((one) => one.direction === direction && one.lenses.includes(of));
  const isIn = (above: number, end: number, size: number): boolean =>
    (size > above + NOISE || above === 0) && upTo(size, end);
  const row = table?.rows.find(
    (one) => isIn(one.above, one.end, power) && (!one.ordered || isIn(...one.ordered, Math.abs(prism))),
  );
  if (!table || !row) return null;
  const apart = (end: number): number => Math.abs(power - end);
  const isOnEdge = table.rows.some(({ end }) => apart(end) > NOISE && apart(end) < 1e-3);
  if (row.mm !== undefined) return { prism: null, mm: row.mm, isOnEdge };
  return { prism: (row.prism ?? 0) + ((row.shift ?? 0) / 10) * power, mm: null, isOnEdge };
}
