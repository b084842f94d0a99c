/** What an order may refer to: the standard of the file, defaults, house tolerances, instruments. */
import { type Block, type LentilDocument, sectionsOf } from '../grammar';
import { type ToleranceSet, toleranceSetById } from '../tables';
import type { Place } from './finding';
import { type HouseSet, houseSetOf } from './house';
import { instrumentOf } from './instrument';
import type { Instrument, Order, Placed } from './model';
import type { GuardBand } from './uncertainty';

export interface FileStandard {
  readonly name: string;
  readonly block: Block;
  readonly place: Place;
}

/** Names and settings that hold for every order of a document. */
export interface Context {
  /** The `standard` line of the file, wherever it stands. */
  readonly standard: FileStandard | null;
  /** The set for files that name none: from the settings or the command line. */
  readonly fallbackStandard: string | null;
  readonly defaults: Block | null;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly houses: ReadonlyMap<string, HouseSet>;
  readonly guard: GuardBand;
}

/** Parts of a context that one text contributes; kept per block, so that an edit elsewhere reuses them. */
interface Contribution {
  /** All of them; the first of the file holds. */
  readonly standards: readonly FileStandard[];
  readonly instrument: Instrument | null;
  readonly house: HouseSet | null;
  readonly defaults: boolean;
}

const CONTRIBUTION = Symbol('contribution');

export function contributionOf(block: Block): Contribution {
  let known = block.memo.get(CONTRIBUTION) as Contribution | undefined;
  if (!known) {
    known = {
      standards: fileStandards(block),
      instrument: block.kind === 'instrument' ? instrumentOf(block) : null,
      house: block.kind === 'tolerance' ? houseSetOf(block) : null,
      defaults: block.kind === 'defaults',
    };
    block.memo.set(CONTRIBUTION, known);
  }
  return known;
}

/** Cheap test before a parse: only lines whose first word is `standard` are looked at. */
const STANDARD_LINE = /^\s*standard\b/i;

const NONE: readonly FileStandard[] = [];

function fileStandards(block: Block): readonly FileStandard[] {
  if (!block.lines.some(({ text }) => STANDARD_LINE.test(text))) return NONE;
  return sectionsOf(block).flatMap(({ kind }, line) => {
    const node = kind === 'file' ? block.lines[line]?.parsed(block.kind).node : undefined;
    if (node?.kind !== 'standard' || !node.name) return [];
    return [{ name: node.name.text, block, place: { line, start: node.name.start, end: node.name.end } }];
  });
}

/**
 * The context of a document.
 * @param shared texts of the bench files that the document may refer to, nearest first
 */
export function contextOf(
  document: LentilDocument,
  fallbackStandard: string | null,
  shared: readonly LentilDocument[] = [],
  guard: GuardBand = 'simple',
): Context {
  const instruments = new Map<string, Instrument>();
  const houses = new Map<string, HouseSet>();
  let standard: Context['standard'] = null;
  let defaults: Block | null = null;
  for (const [at, source] of [document, ...shared].entries()) {
    for (const block of source.blocks) {
      const own = contributionOf(block);
      if (own.instrument && !instruments.has(own.instrument.name)) instruments.set(own.instrument.name, own.instrument);
      if (own.house && !houses.has(own.house.name)) houses.set(own.house.name, own.house);
      if (at === 0 && !standard) standard = own.standards[0] ?? null;
      if (at === 0 && own.defaults && !defaults) defaults = block;
    }
  }
  return { standard, fallbackStandard, defaults, instruments, houses, guard };
}

export interface Standard {
  /** The published set that decides; for a house set, the one it is built on. */
  readonly set: ToleranceSet | null;
  readonly house: HouseSet | null;
  /** The name as written, for a message when there is no such set. */
  readonly name: string | null;
  readonly place: Placed<string> | null;
}

/** The set of a name, or null when there is none. */
export const setNamed = (name: string): ToleranceSet | null => toleranceSetById.get(name.toLowerCase()) ?? null;

/** The set an order is judged by: its own, then the file’s, then the fallback; a house set brings its parent along. */
export function standardOf(order: Order, context: Context): Standard {
  const name = order.standard?.value ?? context.standard?.name ?? context.fallbackStandard;
  const house = name === null ? null : (context.houses.get(name) ?? null);
  const published = house ? house.parent : name;
  return { set: published === null ? null : setNamed(published), house, name, place: order.standard };
}
