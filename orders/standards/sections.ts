/** The tables of a tolerance set as rows of words. */
import type { Provenance, ToleranceSet } from '../../tables';
import { bandInWords } from '../band';
import { atMostInWords, limitInWords, prismLimitInWords } from './limit-words';

/** One table of a set in words; each row ends with its evidence and the id of its source. */
export interface StandardSection {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

/** The tables of a set in the order of its page. */
export const standardSections = (set: ToleranceSet): readonly StandardSection[] => [
  ...powers(set),
  ...(set.axis ?? []).map((table) =>
    section(
      `Axis, ${lensesInWords(table.lenses)}`,
      ['cylinder', 'limit'],
      table.rows.map((row) => [row, bandInWords(row.cylinder, 'D'), limitInWords(row.limit)]),
      table.note,
    ),
  ),
  ...(set.add ?? []).map((table) =>
    section(
      `Add, ${lensesInWords(table.lenses)}`,
      ['add', 'limit'],
      table.rows.map((row) => [row, bandInWords(row.add, 'D'), limitInWords(row.limit)]),
      table.note,
    ),
  ),
  ...lensPrism(set),
  ...pairPrism(set),
  ...plainLimits(set),
];

/** Cylinders stand in a table of their own, so that each limit has room for what it rests on. */
function powers({ power }: ToleranceSet): StandardSection[] {
  return power.flatMap(({ lenses, judged, rows, note }) => [
    section(
      `Power, ${lensesInWords(lenses)}`,
      ['strongest meridian', judged === 'each-meridian' ? 'limit on each meridian' : 'limit on that meridian'],
      rows.map((row) => [row.meridian, bandInWords(row.power, 'D'), limitInWords(row.meridian.limit)]),
      note,
    ),
    section(
      `Cylinder, ${lensesInWords(lenses)}`,
      ['strongest meridian', 'cylinder', 'limit'],
      rows.flatMap((row) =>
        row.cylinder.map((cell): [Provenance, ...string[]] => [
          cell,
          bandInWords(row.power, 'D'),
          bandInWords(cell.cylinder, 'D'),
          limitInWords(cell.limit),
        ]),
      ),
    ),
  ]);
}

const lensPrism = ({ lensPrism: tables = [] }: ToleranceSet): StandardSection[] =>
  tables.map((table) =>
    section(
      `Prism of one lens (${table.supply.join(', ')}), ${lensesInWords(table.lenses)}`,
      ['direction', 'ordered prism', table.combine === 'any' ? 'limit, either is enough' : 'limit, both have to hold'],
      table.rows.map((row) => [
        row,
        row.component,
        bandInWords(row.orderedPrism, 'Δ'),
        row.limits.map(prismLimitInWords).join(table.combine === 'any' ? ' or ' : ' and '),
      ]),
      table.note,
    ),
  );

const pairPrism = ({ pairPrism: tables = [] }: ToleranceSet): StandardSection[] =>
  tables.map((table) =>
    section(
      `Prism of a mounted pair, ${table.component}, ${lensesInWords(table.lenses)}`,
      ['stronger lens', 'ordered prism', 'limit', 'held against'],
      table.rows.map((row) => [
        row,
        bandInWords(row.power, 'D'),
        row.orderedPrism ? bandInWords(row.orderedPrism, 'Δ') : 'any',
        prismLimitInWords(row.limit),
        `${row.judged.replaceAll('-', ' ')}, ${row.counted.replaceAll('-', ' ')}`,
      ]),
      table.note,
    ),
  );

const PLAIN = {
  segmentHeight: 'height of the segment',
  segmentHeightDifference: 'heights of the two segments',
  segmentHorizontal: 'segments, horizontal place',
  segmentTilt: 'tilt of the segment',
  segmentSize: 'size of the segment',
  segmentSizeDifference: 'sizes of the two segments',
  fittingHeight: 'height of the fitting point',
  fittingHeightDifference: 'heights of the two fitting points',
  fittingHorizontal: 'fitting point, horizontal place',
  markTilt: 'tilt of the permanent marks',
  baseCurve: 'base curve',
  centreThickness: 'centre thickness',
  warp: 'warp',
} as const satisfies Partial<Record<keyof ToleranceSet, string>>;

function plainLimits(set: ToleranceSet): StandardSection[] {
  const keys = Object.keys(PLAIN) as (keyof typeof PLAIN)[];
  const rows = keys.flatMap((key): [Provenance, ...string[]][] => {
    const found = set[key];
    if (!found) return [];
    const asked = found.applies === 'when-ordered' ? ', when ordered' : '';
    return [
      [
        found,
        PLAIN[key],
        key === 'warp' ? atMostInWords(found.limit) : limitInWords(found.limit),
        `${found.counted.replaceAll('-', ' ')}${asked}`,
      ],
    ];
  });
  return rows.length > 0 ? [section('Places and shapes', ['item', 'limit', 'counted'], rows)] : [];
}

/** Each row ends with its evidence and the id of its source; what its cells have to say stands under the table. */
function section(
  title: string,
  head: readonly string[],
  rows: readonly (readonly [Provenance, ...string[]])[],
  note?: string,
): StandardSection {
  const notes = [note, ...rows.map(([row]) => row.note)].filter((one) => one !== undefined);
  return {
    title,
    head: [...head, 'evidence', ''],
    rows: rows.map(([{ evidence, source }, ...cells]) => [...cells, evidence, source]),
    notes: [...new Set(notes)],
  };
}

const lensesInWords = (lenses: readonly string[]): string =>
  lenses.length > 1 ? 'all lenses' : lenses[0] === 'progressive' ? 'progressives' : 'single vision and segments';
