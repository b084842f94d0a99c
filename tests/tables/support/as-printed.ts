import type {
  AxisRow,
  Band,
  LensClass,
  PairPrismRow,
  PlainLimit,
  PowerLimit,
  PrismLimit,
  ToleranceSet,
} from '../../../tables';

/*
 * Tables written out the way they stand on paper, so that a test can hold them against lines copied from a printed
 * table. P, S and M at the end of a line are the evidence: published, secondary, memory.
 */

const GRADES = { published: 'P', secondary: 'S', memory: 'M' } as const;
const UNITS = { D: 'D', deg: '°', mm: 'mm' } as const;

export function powerAsPrinted(set: ToleranceSet, lenses: LensClass): string[] {
  const table = tableFor(set.power, lenses);
  return table.rows.flatMap((row) => [
    `${band(row.power)} | ${powerLimit(row.meridian.limit)} | ${GRADES[row.meridian.evidence]}`,
    ...row.cylinder.map(
      (cell) => `  cyl ${band(cell.cylinder)} | ${powerLimit(cell.limit)} | ${GRADES[cell.evidence]}`,
    ),
  ]);
}

/** Only the figures, one line a row: meridian, then the cylinder limits from left to right. */
export function powerGrid(set: ToleranceSet, lenses: LensClass): string[] {
  return tableFor(set.power, lenses).rows.map(
    (row) =>
      `${band(row.power)} | ${[row.meridian, ...row.cylinder].map((cell) => powerLimit(cell.limit)).join(' | ')}`,
  );
}

export function cylinderHeadings(set: ToleranceSet, lenses: LensClass): string[] {
  const headings = tableFor(set.power, lenses).rows.map((row) => row.cylinder.map((cell) => band(cell.cylinder)));
  return [...new Set(headings.map((heading) => heading.join(' | ')))];
}

export function powerEvidence(set: ToleranceSet, lenses: LensClass): string[] {
  const rows = tableFor(set.power, lenses).rows;
  return [...new Set(rows.flatMap((row) => [row.meridian, ...row.cylinder].map((cell) => GRADES[cell.evidence])))];
}

export function axisAsPrinted(set: ToleranceSet, lenses: LensClass): string[] {
  return tableFor(set.axis, lenses).rows.map(
    (row) => `${band(row.cylinder)} | ${axisLimit(row.limit)} | ${GRADES[row.evidence]}`,
  );
}

export function addAsPrinted(set: ToleranceSet, lenses: LensClass): string[] {
  return tableFor(set.add ?? [], lenses).rows.map(
    (row) => `${band(row.add)} | ${powerLimit(row.limit)} | ${GRADES[row.evidence]}`,
  );
}

export function lensPrismAsPrinted(set: ToleranceSet, lenses: LensClass): string[] {
  const table = tableFor(set.lensPrism ?? [], lenses);
  return table.rows.map((row) => {
    const limits = row.limits.map(prismLimit).join(table.combine === 'any' ? ' or ' : ' and ');
    return `${row.component}, ordered ${band(row.orderedPrism)} | ${limits} | ${GRADES[row.evidence]}`;
  });
}

export function pairPrismAsPrinted(
  set: ToleranceSet,
  lenses: LensClass,
  component: 'horizontal' | 'vertical',
): string[] {
  const tables = (set.pairPrism ?? []).filter((table) => table.component === component);
  return tableFor(tables, lenses).rows.map(
    (row) => `${pairBands(row)} | ${prismLimit(row.limit)} | ${judged(row)} | ${GRADES[row.evidence]}`,
  );
}

const PLAIN = [
  'segmentHeight',
  'segmentHeightDifference',
  'segmentHorizontal',
  'segmentTilt',
  'segmentSize',
  'segmentSizeDifference',
  'fittingHeight',
  'fittingHeightDifference',
  'fittingHorizontal',
  'markTilt',
  'baseCurve',
  'centreThickness',
  'warp',
] as const;

export function plainAsPrinted(set: ToleranceSet): string[] {
  return PLAIN.flatMap((name) => {
    const item: PlainLimit | undefined = set[name];
    if (item === undefined) return [];
    const when = item.applies === 'when-ordered' ? ' when ordered' : '';
    return [
      `${name} | ${item.limit.amount} ${UNITS[item.limit.unit]} ${item.counted}${when} | ${GRADES[item.evidence]}`,
    ];
  });
}

/** The table for a class of lenses. A set without one fails the test that asks for it. */
export function tableFor<Table extends { readonly lenses: readonly LensClass[] }>(
  tables: readonly Table[],
  lenses: LensClass,
): Table {
  const found = tables.filter((table) => table.lenses.includes(lenses));
  if (found[0] === undefined || found.length > 1) throw new Error(`${found.length} tables for ${lenses}`);
  return found[0];
}

export function band({ atLeast, above, atMost, below }: Band): string {
  const ends = [
    atLeast === undefined ? '' : `≥ ${figure(atLeast)}`,
    above === undefined ? '' : `> ${figure(above)}`,
    atMost === undefined ? '' : `≤ ${figure(atMost)}`,
    below === undefined ? '' : `< ${figure(below)}`,
  ];
  return ends.filter((end) => end !== '').join(' ');
}

function powerLimit(limit: PowerLimit): string {
  if (limit.kind === 'not-defined') return '-';
  if (limit.kind === 'percent') return `${limit.percent} % of ${limit.of}`;
  return limit.unit === 'D' ? `±${figure(limit.amount)}` : `±${limit.amount} ${limit.unit}`;
}

function axisLimit(limit: AxisRow['limit']): string {
  return limit.kind === 'not-defined' ? 'not defined' : `±${limit.amount}${UNITS[limit.unit]}`;
}

function prismLimit(limit: PrismLimit): string {
  if (limit.kind === 'prism') return `${figure(limit.amount)} Δ`;
  if (limit.kind === 'shift') return `${limit.mm.toFixed(1)} mm`;
  return `${figure(limit.amount)} Δ + ${limit.mm.toFixed(1)} mm`;
}

function pairBands(row: PairPrismRow): string {
  return row.orderedPrism === undefined
    ? band(row.power)
    : `ordered ${band(row.orderedPrism)}, power ${band(row.power)}`;
}

function judged(row: PairPrismRow): string {
  return `${row.judged} ${row.counted}`;
}

/** Two decimals as on paper, three where the paper has three. */
function figure(value: number): string {
  return Number(value.toFixed(2)) === value ? value.toFixed(2) : String(value);
}
