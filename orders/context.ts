/** What an order may refer to: the standard of the file, defaults, house tolerances, instruments. */
import { type Block, type LentilDocument, sectionsOf } from '../grammar';
import { type ToleranceSet, toleranceSetById } from '../tables';
import type { Place } from './finding';
import { type HouseSet, houseSetOf } from './house';
import { instrumentOf } from './instrument';
import type { Instrument, Order, Placed } from './model';
import type { OrderElsewhere } from './order-elsewhere';
import { carryNames, sharedNames } from './order-names';
import { strayIn } from './stray-line';
import type { GuardBand } from './uncertainty';

export interface FileStandard {
  readonly name: string;
  readonly block: Block;
  readonly place: Place;
}

/** A file or an answer that the judgement should rest on and that is not at hand. Without it nothing is judged. */
export interface MissingInput {
  /** What it is, for a sentence: the name of the file. */
  readonly what: string;
  /** Why it cannot be used; null where it has not come yet. */
  readonly why: string | null;
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
  /** Names that more than one order of the document has, with how many have them. */
  readonly sharedNames: ReadonlyMap<string, number>;
  /** From how many percent of its limit on a deviation that passes is told; null tells none. */
  readonly nearPercent: number | null;
  /** Orders of other files by the name they share with one of this document. */
  readonly elsewhere: ReadonlyMap<string, readonly OrderElsewhere[]>;
  /** What should be known of the above and is not. */
  readonly missing: readonly MissingInput[];
  /** The day of checking, year-month-day, against which no date of a reading may lie ahead; null holds none against it. */
  readonly today: string | null;
  /** A line of the text that is none, and that may have been meant for all its orders; as typed. */
  readonly stray: string | null;
}

/** Parts of a context that one text contributes; kept per block, so that an edit elsewhere reuses them. */
interface Contribution {
  /** All of them; the first of the file holds. */
  readonly standards: readonly FileStandard[];
  readonly instrument: Instrument | null;
  readonly house: HouseSet | null;
  readonly defaults: boolean;
  readonly stray: string | null;
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
      stray: strayIn(block),
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

/** A block that says something other blocks may rest on, with its place among the blocks of its document. */
export interface Contributor {
  readonly index: number;
  readonly block: Block;
}

const CONTRIBUTORS = new WeakMap<LentilDocument, readonly Contributor[]>();

/** The blocks of a document that a context is made from, in its order; looked for once in each document. */
export function contributorsOf(document: LentilDocument): readonly Contributor[] {
  let known = CONTRIBUTORS.get(document);
  if (!known) {
    known = contributorsAmong(document.blocks, 0);
    CONTRIBUTORS.set(document, known);
  }
  return known;
}

/**
 * Tells the contributors of a document after an edit without looking through its blocks, and whether the edit touched any
 * or the name of an order.
 * @param head how many blocks the two documents share at their beginnings
 * @param tail how many they share at their ends
 */
export function carryContributors(before: LentilDocument, after: LentilDocument, head: number, tail: number): boolean {
  const end = before.blocks.length - tail;
  const moved = after.blocks.length - before.blocks.length;
  const old = contributorsOf(before);
  const come = contributorsAmong(after.blocks.slice(head, after.blocks.length - tail), head);
  const above = old.filter(({ index }) => index < head);
  const below = old.filter(({ index }) => index >= end);
  const shifted = moved === 0 ? below : below.map(({ index, block }) => ({ index: index + moved, block }));
  CONTRIBUTORS.set(after, [...above, ...come, ...shifted]);
  const isRenamed = carryNames(before, after, head, tail);
  return isRenamed || come.length > 0 || above.length + below.length < old.length;
}

const contributorsAmong = (blocks: readonly Block[], first: number): Contributor[] =>
  blocks.flatMap((block, at) => (contributes(contributionOf(block)) ? [{ index: first + at, block }] : []));

export const contributes = ({ standards, instrument, house, defaults, stray }: Contribution): boolean =>
  standards.length > 0 || instrument !== null || house !== null || defaults || stray !== null;

/** What the user decides for all orders of a document; each has a default. */
export interface Choices {
  /** Tolerance set for orders and files that name none. */
  readonly standard?: string | null;
  /** What to do with a reading that its instrument cannot tell from the limit. */
  readonly guard?: GuardBand;
  /** From how many percent of its limit on a deviation that passes is told; null tells none. */
  readonly nearPercent?: number | null;
  /** Orders of other files by the name they share with one of the document; an order with other powers is told. */
  readonly elsewhere?: Context['elsewhere'];
  /** Inputs that belong to the document and are not at hand; while there are any, no order is judged. */
  readonly missing?: readonly MissingInput[];
  /** The day of checking, year-month-day; no reading and no calibration can be of a later one. Null or absent: no check. */
  readonly today?: string | null;
}

const NOTHING_ELSEWHERE: Context['elsewhere'] = new Map();
const NOTHING_MISSING: readonly MissingInput[] = [];

/**
 * The context of a document.
 * @param shared texts of the bench files that the document may refer to, nearest first
 */
export function contextOf(
  document: LentilDocument,
  choices: Choices = {},
  shared: readonly LentilDocument[] = [],
): Context {
  const sources = [document, ...shared].map((source) => contributorsOf(source).map(({ block }) => block));
  return contextFrom(sources, choices, sharedNames(document));
}

/**
 * The context of a text of which only the blocks are at hand that others may rest on.
 * @param sources those of the text, then those of the bench files, nearest first
 * @param names names that more than one order of the text has
 */
export function contextFrom(
  sources: readonly (readonly Block[])[],
  {
    standard: fallbackStandard = null,
    guard = 'simple',
    nearPercent = null,
    missing = NOTHING_MISSING,
    elsewhere = NOTHING_ELSEWHERE,
    today = null,
  }: Choices,
  names: Context['sharedNames'],
): Context {
  const instruments = new Map<string, Instrument>();
  const houses = new Map<string, HouseSet>();
  let standard: Context['standard'] = null;
  let defaults: Block | null = null;
  let stray: string | null = null;
  for (const [at, source] of sources.entries()) {
    for (const block of source) {
      const own = contributionOf(block);
      if (own.instrument && !instruments.has(own.instrument.name)) instruments.set(own.instrument.name, own.instrument);
      if (own.house && !houses.has(own.house.name)) houses.set(own.house.name, own.house);
      if (at === 0 && !standard) standard = own.standards[0] ?? null;
      if (at === 0 && own.defaults && !defaults) defaults = block;
      if (at === 0) stray ??= own.stray;
    }
  }
  return {
    standard,
    fallbackStandard,
    defaults,
    instruments,
    houses,
    guard,
    nearPercent,
    elsewhere,
    missing,
    today,
    sharedNames: names,
    stray,
  };
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
