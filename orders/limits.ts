/** Looks a limit up in a tolerance set, and says which row it came from. Decides nothing about a reading. */
import type { Band, Evidence, LensClass, PlainLimit, PowerLimit, Provenance, SourceId, ToleranceSet } from '../tables';
import { lensClasses } from '../tables';
import { bandInWords, isInBand } from './band';
import type { Design } from './model';

/** Dioptres, degrees, millimetres or prism dioptres. */
export type Unit = 'D' | 'deg' | 'mm' | 'prism';

/** A limit as it applies to one measure. `amount` is null where the set deliberately sets none. */
export interface Limit {
  readonly amount: number | null;
  readonly unit: Unit;
  readonly set: string;
  /** The table and the row in words, such as `power 0.00 to 6.50 D`. */
  readonly row: string;
  readonly source: SourceId;
  readonly evidence: Evidence;
  readonly note?: string;
}

/** The class of tables a design is judged by; a lens without a design is judged as single vision. */
export const lensClassOf = (design: Design | null): LensClass =>
  CLASS_OF.get(design?.type ?? 'single-vision') ?? 'single-vision-multifocal';

const CLASS_OF: ReadonlyMap<string, LensClass> = new Map(
  lensClasses.flatMap(({ lensClass, designs }) => designs.map((design) => [design, lensClass] as const)),
);

interface Rowed extends Provenance {
  readonly limit: PowerLimit;
}

/** What a limit may be a share of, dioptres. */
interface Ordered {
  readonly meridian: number;
  readonly cylinder: number;
}

/**
 * The limit of a row. One that is no share of a figure is the same for every lens, so it is made once and kept; most
 * measures of a year of work rest on a few dozen rows.
 */
function limitOf(set: ToleranceSet, row: Rowed, table: () => string, of: Ordered): Limit {
  const { limit } = row;
  if (limit.kind === 'percent') {
    const share = Math.abs(limit.of === 'meridian' ? of.meridian : of.cylinder) * (limit.percent / 100);
    return made(set, row, share, 'D', `${wordsOf(row, table)}, ${limit.percent} % of the ${limit.of}`);
  }
  return kept(fixed, row, () =>
    limit.kind === 'absolute' ? made(set, row, limit.amount, limit.unit, table()) : made(set, row, null, 'D', table()),
  );
}

/** What was made of a row, which belongs to one table of one set. */
function kept<R extends object, V>(known: WeakMap<R, V>, row: R, make: () => V): V {
  const found = known.get(row);
  if (found !== undefined) return found;
  const fresh = make();
  known.set(row, fresh);
  return fresh;
}

const fixed = new WeakMap<Rowed, Limit>();
const axes = new WeakMap<Rowed, Limit>();
const pairs = new WeakMap<object, PairLimit>();
const lensPrisms = new WeakMap<object, Limit>();
const words = new WeakMap<object, string>();

const wordsOf = (row: object, make: () => string): string => kept(words, row, make);

const made = (
  set: ToleranceSet,
  { source, evidence, note }: Provenance,
  amount: number | null,
  unit: Unit,
  row: string,
): Limit => ({
  amount,
  unit,
  set: set.id,
  row,
  source,
  evidence,
  ...(note ? { note } : {}),
});

function forClass<T extends { readonly lenses: readonly LensClass[] }>(
  tables: readonly T[] | undefined,
  lens: LensClass,
): T | undefined {
  if (tables) for (const table of tables) if (table.lenses.includes(lens)) return table;
  return undefined;
}

export const judgedMeridians = (set: ToleranceSet, lens: LensClass): 'strongest-meridian' | 'each-meridian' | null =>
  forClass(set.power, lens)?.judged ?? null;

/**
 * Limits of the meridian power and of the cylinder for an ordered lens.
 * @param strongest ordered power of the meridian of highest absolute power, dioptres
 * @param meridian ordered power of the meridian to be judged, dioptres
 * @param cylinder ordered cylinder, dioptres, either sign
 */
export function powerLimits(
  set: ToleranceSet,
  lens: LensClass,
  strongest: number,
  meridian: number,
  cylinder: number,
): { readonly meridian: Limit; readonly cylinder: Limit | null } | null {
  const row = rowAt(forClass(set.power, lens)?.rows, 'power', strongest);
  if (!row) return null;
  // Some sets print no limit for the cylinder of a sphere; its meridians are judged all the same.
  const cell = rowAt(row.cylinder, 'cylinder', cylinder);
  return {
    meridian: fixed.get(row.meridian) ?? meridianLimit(set, row, { meridian, cylinder }),
    cylinder: cell && (fixed.get(cell) ?? cylinderLimit(set, row, cell, { meridian, cylinder })),
  };
}

type PowerRow = NonNullable<ToleranceSet['power']>[number]['rows'][number];

const meridianLimit = (set: ToleranceSet, row: PowerRow, of: Ordered): Limit =>
  limitOf(set, row.meridian, () => powerInRow(row), of);

const cylinderLimit = (set: ToleranceSet, row: PowerRow, cell: PowerRow['cylinder'][number], of: Ordered): Limit =>
  limitOf(set, cell, () => `cylinder ${bandInWords(cell.cylinder, 'D')} at ${powerInRow(row)}`, of);

const powerInRow = (row: PowerRow): string => wordsOf(row, () => `power ${bandInWords(row.power, 'D')}`);

/** The row whose band holds the size of a figure; asked for every measure of a year, so without anything in between. */
function rowAt<K extends string, R extends Readonly<Record<K, Band>>>(
  rows: readonly R[] | undefined,
  key: K,
  figure: number,
): R | null {
  if (rows) for (const row of rows) if (isInBand(Math.abs(figure), row[key])) return row;
  return null;
}

/** Limit of the axis, degrees, by the ordered cylinder. */
export function axisLimit(set: ToleranceSet, lens: LensClass, cylinder: number): Limit | null {
  const row = rowAt(forClass(set.axis, lens)?.rows, 'cylinder', cylinder);
  return row && (axes.get(row) ?? axisLimitOf(set, row));
}

function axisLimitOf(set: ToleranceSet, row: Rowed & { readonly cylinder: Band }): Limit {
  return kept(axes, row, () => ({
    ...limitOf(set, row, () => `axis, cylinder ${bandInWords(row.cylinder, 'D')}`, NOTHING),
    unit: 'deg',
  }));
}

export function addLimit(set: ToleranceSet, lens: LensClass, add: number): Limit | null {
  const row = rowAt(forClass(set.add, lens)?.rows, 'add', add);
  return row && (fixed.get(row) ?? addLimitOf(set, row));
}

const addLimitOf = (set: ToleranceSet, row: Rowed & { readonly add: Band }): Limit =>
  limitOf(set, row, () => `add ${bandInWords(row.add, 'D')}`, NOTHING);

const NOTHING = { meridian: 0, cylinder: 0 };

export interface PairLimit extends Limit {
  readonly judged:
    | 'prism-imbalance'
    | 'height-difference'
    | 'distance-pd'
    | 'monocular-pd'
    | 'reference-point-height'
    | 'lens-prism';
  /** Millimetres of shift whose prism is added to the amount. */
  readonly shift: number;
}

/**
 * Limit of the unwanted prism of a mounted pair in one direction.
 * @param power ordered power along the direction of the stronger lens, dioptres
 * @param ordered larger ordered prism of the two lenses in that direction, prism dioptres
 */
export function pairLimit(
  set: ToleranceSet,
  lens: LensClass,
  component: 'horizontal' | 'vertical',
  power: number,
  ordered: number,
): PairLimit | null {
  const table = set.pairPrism?.find((one) => one.component === component && one.lenses.includes(lens));
  const row = table?.rows.find(
    (one) =>
      isInBand(Math.abs(power), one.power) && (!one.orderedPrism || isInBand(Math.abs(ordered), one.orderedPrism)),
  );
  return row ? kept(pairs, row, () => ofPair(set, component, row)) : null;
}

type PairRow = NonNullable<ToleranceSet['pairPrism']>[number]['rows'][number];

function ofPair(set: ToleranceSet, component: 'horizontal' | 'vertical', row: PairRow): PairLimit {
  const base = {
    set: set.id,
    row: `${component} prism of a pair, power ${bandInWords(row.power, 'D')}`,
    source: row.source,
    evidence: row.evidence,
    judged: row.judged,
    ...(row.note ? { note: row.note } : {}),
  };
  if (row.limit.kind === 'prism') return { ...base, amount: row.limit.amount, unit: 'prism', shift: 0 };
  if (row.limit.kind === 'prism-plus-shift')
    return { ...base, amount: row.limit.amount, unit: 'prism', shift: row.limit.mm };
  return row.judged === 'prism-imbalance' || row.judged === 'lens-prism'
    ? { ...base, amount: 0, unit: 'prism', shift: row.limit.mm }
    : { ...base, amount: row.limit.mm, unit: 'mm', shift: 0 };
}

/** Limits of the unwanted prism of one lens in one direction. */
export interface LensPrismLimit {
  readonly component: 'horizontal' | 'vertical' | 'resultant';
  /** Meeting any one is enough, or all have to be met. */
  readonly combine: 'any' | 'all';
  readonly powerOf: 'along-the-error' | 'strongest-meridian';
  /** Prism dioptres, and millimetres of shift whose prism is added. */
  readonly limits: readonly { readonly amount: number; readonly mm: number }[];
  /** Row and provenance; the amount is worked out with the power of the lens. */
  readonly limit: Limit;
}

/**
 * Limits of the unwanted prism of one lens by itself, none where the set has no such table for the supply.
 * @param ordered ordered prism of the lens, prism dioptres
 */
export function lensPrismLimits(
  set: ToleranceSet,
  lens: LensClass,
  supply: 'uncut' | 'edged' | 'glazed',
  ordered: { readonly right: number; readonly up: number },
): readonly LensPrismLimit[] {
  const sizes = {
    horizontal: Math.abs(ordered.right),
    vertical: Math.abs(ordered.up),
    resultant: Math.hypot(ordered.right, ordered.up),
  };
  const tables = set.lensPrism?.filter((one) => one.lenses.includes(lens) && one.supply.includes(supply)) ?? [];
  return tables.flatMap(({ combine, powerOf, rows }) =>
    rows
      .filter(({ component, orderedPrism }) => isInBand(sizes[component], orderedPrism))
      .map((row) => ({
        component: row.component,
        combine,
        powerOf,
        limits: row.limits.map((one) => ({
          amount: one.kind === 'shift' ? 0 : one.amount,
          mm: one.kind === 'prism' ? 0 : one.mm,
        })),
        limit: kept(lensPrisms, row, () => {
          const direction = row.component === 'resultant' ? 'any direction' : row.component;
          const ordered = bandInWords(row.orderedPrism, 'Δ');
          return made(set, row, null, 'prism', `prism of one lens, ${direction}, ordered ${ordered}`);
        }),
      })),
  );
}

/**
 * Limit of a slab-off, prism dioptres. No set has a table for it, so it takes the limit that the set has for unwanted
 * vertical prism, at no power and no ordered prism: of a pair, or of one lens where the set judges lenses by themselves.
 */
export function slabLimit(set: ToleranceSet, lens: LensClass, supply: 'uncut' | 'edged' | 'glazed'): Limit | null {
  const ofPair = pairLimit(set, lens, 'vertical', 0, 0);
  if (ofPair?.unit === 'prism' && ofPair.amount) return asSlab(ofPair, ofPair.amount);
  const ofLens = lensPrismLimits(set, lens, supply, { right: 0, up: 0 }).filter(
    ({ component }) => component !== 'horizontal',
  );
  const amounts = ofLens.flatMap(({ limits }) => limits.map(({ amount }) => amount)).filter((amount) => amount > 0);
  const [first] = ofLens;
  return first && amounts.length > 0 ? asSlab(first.limit, Math.min(...amounts)) : null;
}

const asSlab = ({ set, row, source, evidence }: Limit, amount: number): Limit => ({
  amount,
  unit: 'prism',
  set,
  row: `slab-off, as ${row}`,
  source,
  evidence,
  note: 'The set has no limit for a slab-off; that for unwanted vertical prism is taken. Common practice, no source.',
});

export type PlainTable = {
  [K in keyof ToleranceSet]-?: NonNullable<ToleranceSet[K]> extends PlainLimit ? K : never;
}[keyof ToleranceSet];

const PLAIN_WORDS: Readonly<Record<PlainTable, string>> = {
  segmentHeight: 'segment height, each lens',
  segmentHeightDifference: 'segment heights of a pair',
  segmentHorizontal: 'segments, horizontal place',
  segmentTilt: 'segment tilt',
  segmentSize: 'segment size',
  segmentSizeDifference: 'segment sizes of a pair',
  fittingHeight: 'fitting height, each lens',
  fittingHeightDifference: 'fitting heights of a pair',
  fittingHorizontal: 'fitting point, horizontal place',
  markTilt: 'tilt of the permanent marks',
  baseCurve: 'base curve',
  centreThickness: 'centre thickness',
  warp: 'warp',
};

/** A limit without bands. */
export function plainLimit(set: ToleranceSet, table: PlainTable): Limit | null {
  const found = set[table];
  return found ? (fixed.get(found) ?? plainLimitOf(set, table, found)) : null;
}

const plainLimitOf = (set: ToleranceSet, table: PlainTable, row: Rowed): Limit =>
  limitOf(set, row, () => PLAIN_WORDS[table], NOTHING);
