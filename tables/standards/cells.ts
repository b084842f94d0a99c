import type {
  AbsoluteLimit,
  AddRow,
  AxisRow,
  Band,
  Counted,
  NotDefined,
  PercentLimit,
  PlainLimit,
  PowerLimit,
  PowerRow,
  PrismLimit,
  Provenance,
} from './tolerance-set';

/*
 * Shorthand for writing the sets, so that a table in the source looks like the table on paper. Nothing here decides.
 */

export const dioptres = (amount: number): AbsoluteLimit => ({ kind: 'absolute', amount, unit: 'D' });
export const degrees = (amount: number): AbsoluteLimit => ({ kind: 'absolute', amount, unit: 'deg' });
export const millimetres = (amount: number): AbsoluteLimit => ({ kind: 'absolute', amount, unit: 'mm' });
export const percentOf = (of: PercentLimit['of'], percent: number): PercentLimit => ({ kind: 'percent', percent, of });
export const notDefined: NotDefined = { kind: 'not-defined' };

export const prism = (amount: number): PrismLimit => ({ kind: 'prism', amount });
export const shift = (mm: number): PrismLimit => ({ kind: 'shift', mm });
export const prismPlusShift = (amount: number, mm: number): PrismLimit => ({ kind: 'prism-plus-shift', amount, mm });

/** One printed line of a power table: its band, the limit of the meridian, the limit under each cylinder heading. */
export type PrintedPowerRow = readonly [power: Band, meridian: PowerLimit, cylinder: readonly PowerLimit[]];

/** A power table as printed: the cylinder headings, then the lines. A line that is too short has a dash there. */
export function powerRows(
  cylinders: readonly Band[],
  printed: readonly PrintedPowerRow[],
  provenance: Provenance,
): readonly PowerRow[] {
  return printed.map(([power, meridian, limits]) => ({
    power,
    meridian: { limit: meridian, ...provenance },
    cylinder: cylinders.map((cylinder, column) => ({ cylinder, limit: limits[column] ?? notDefined, ...provenance })),
  }));
}

export function axisRows(
  printed: readonly (readonly [cylinder: Band, limit: AxisRow['limit']])[],
  provenance: Provenance,
): readonly AxisRow[] {
  return printed.map(([cylinder, limit]) => ({ cylinder, limit, ...provenance }));
}

export function addRows(
  printed: readonly (readonly [add: Band, limit: AbsoluteLimit])[],
  provenance: Provenance,
): readonly AddRow[] {
  return printed.map(([add, limit]) => ({ add, limit, ...provenance }));
}

export function always(limit: AbsoluteLimit, counted: Counted, provenance: Provenance): PlainLimit {
  return { limit, counted, applies: 'always', ...provenance };
}

export function whenOrdered(limit: AbsoluteLimit, counted: Counted, provenance: Provenance): PlainLimit {
  return { limit, counted, applies: 'when-ordered', ...provenance };
}
