/** The tables of a tolerance set as rows of words. */
import { type Band, bandInWords, type Provenance, type ToleranceSet } from '../orders';
import { limitInWords, prismLimitInWords } from './limit-words';

export interface Section {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

type Row = Provenance;

export const sectionsOf = (set: ToleranceSet): readonly Section[] => [
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

function powers({ power }: ToleranceSet): Section[] {
  return power.map((table) => {
    const bands = table.rows.reduce<readonly Band[]>(
      (most, { cylinder }) => (cylinder.length > most.length ? cylinder.map((cell) => cell.cylinder) : most),
      [],
    );
    const which = table.judged === 'each-meridian' ? 'each meridian' : 'strongest meridian';
    return section(
      `Power, ${lensesInWords(table.lenses)}`,
      [
        'strongest meridian',
        which === 'each meridian' ? which : 'limit on it',
        ...bands.map((band) => `cylinder ${bandInWords(band, 'D')}`),
      ],
      table.rows.map((row) => [
        row.meridian,
        bandInWords(row.power, 'D'),
        limitInWords(row.meridian.limit),
        ...row.cylinder.map((cell) => `${limitInWords(cell.limit)}${weaker(cell, row.meridian)}`),
      ]),
      table.note,
      table.rows.flatMap(({ cylinder }) => cylinder),
    );
  });
}

/** A cell that is less well established than the rest of its row says so itself. */
const weaker = (cell: Provenance, row: Provenance): string =>
  cell.evidence === row.evidence ? '' : ` (${cell.evidence})`;

const lensPrism = ({ lensPrism: tables = [] }: ToleranceSet): Section[] =>
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

const pairPrism = ({ pairPrism: tables = [] }: ToleranceSet): Section[] =>
  tables.map((table) =>
    section(
      `Prism of a mounted pair, ${table.component}, ${lensesInWords(table.lenses)}`,
      ['power of the stronger lens that way', 'ordered prism', 'limit', 'held against'],
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
  segmentHeightDifference: 'heights of the segments, one against the other',
  segmentHorizontal: 'segments, horizontal place',
  segmentTilt: 'tilt of the segment',
  segmentSize: 'size of the segment',
  segmentSizeDifference: 'sizes of the segments, one against the other',
  fittingHeight: 'height of the fitting point',
  fittingHeightDifference: 'heights of the fitting points, one against the other',
  fittingHorizontal: 'fitting point, horizontal place',
  markTilt: 'tilt of the permanent marks',
  baseCurve: 'base curve',
  centreThickness: 'centre thickness',
  warp: 'warp',
} as const satisfies Partial<Record<keyof ToleranceSet, string>>;

function plainLimits(set: ToleranceSet): Section[] {
  const keys = Object.keys(PLAIN) as (keyof typeof PLAIN)[];
  const rows = keys.flatMap((key): [Row, ...string[]][] => {
    const found = set[key];
    if (!found) return [];
    const asked = found.applies === 'when-ordered' ? ', when ordered' : '';
    return [[found, PLAIN[key], limitInWords(found.limit), `${found.counted.replaceAll('-', ' ')}${asked}`]];
  });
  return rows.length > 0 ? [section('Places and shapes', ['item', 'limit', 'counted'], rows)] : [];
}

/** @param more cells besides the rows themselves whose notes belong under the table */
function section(
  title: string,
  head: readonly string[],
  rows: readonly (readonly [Row, ...string[]])[],
  note?: string,
  more: readonly Row[] = [],
): Section {
  const provenances = [...rows.map(([row]) => row), ...more];
  const notes = [note, ...provenances.map((row) => row.note)].filter((one) => one !== undefined);
  return {
    title,
    head: [...head, 'evidence', 'source'],
    rows: rows.map(([{ evidence, source }, ...cells]) => [...padded(cells, head.length), evidence, source]),
    notes: [...new Set(notes)],
  };
}

/** A row with fewer cells than headings keeps its evidence in the right column. */
const padded = (cells: readonly string[], length: number): string[] =>
  Array.from({ length }, (_, at) => cells[at] ?? '');

const lensesInWords = (lenses: readonly string[]): string =>
  lenses.length > 1 ? 'all lenses' : lenses[0] === 'progressive' ? 'progressives' : 'single vision and segments';
