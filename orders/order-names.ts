/** Which names the orders of a document have, so that two of one name are noticed without looking through the file. */
import { type Block, type Cuts, type LentilDocument, textAt } from '../grammar';

interface Names {
  readonly counts: ReadonlyMap<string, number>;
  /** Those that more than one order has, with how many have them. */
  readonly shared: ReadonlyMap<string, number>;
}

const NAMES = new WeakMap<LentilDocument, Names>();

/** Names that more than one order of a document has, with how many orders have them. */
export const sharedNames = (document: LentilDocument): ReadonlyMap<string, number> => namesOf(document).shared;

/** The same of the orders of a long text. */
export function sharedNamesIn(cuts: Cuts): ReadonlyMap<string, number> {
  const names = cuts.kinds.map((kind, at) =>
    kind === 'order' ? nameInHeader(/^[^\r\n]*/.exec(textAt(cuts, at))?.[0] ?? '') : null,
  );
  return changed(new Map(), new Map(), names, 1).shared;
}

/** Every name that an order of the document has, with how many have it. */
export const orderNames = (document: LentilDocument): ReadonlyMap<string, number> => namesOf(document).counts;

function namesOf(document: LentilDocument): Names {
  const known = NAMES.get(document);
  if (known) return known;
  return keep(document, changed(new Map(), new Map(), document.blocks.map(nameOfBlock), 1));
}

/**
 * Tells the names of a document after an edit from those before it, and whether the edit touched any.
 * @param head how many blocks the two documents share at their beginnings
 * @param tail how many they share at their ends
 */
export function carryNames(before: LentilDocument, after: LentilDocument, head: number, tail: number): boolean {
  const gone = before.blocks.slice(head, before.blocks.length - tail).map(nameOfBlock);
  const come = after.blocks.slice(head, after.blocks.length - tail).map(nameOfBlock);
  const old = namesOf(before);
  if (gone.join('\n') === come.join('\n')) {
    NAMES.set(after, old);
    return false;
  }
  const less = changed(new Map(old.counts), new Map(old.shared), gone, -1);
  keep(after, changed(less.counts, less.shared, come, 1));
  return true;
}

function keep(document: LentilDocument, names: Names): Names {
  NAMES.set(document, names);
  return names;
}

function changed(
  counts: Map<string, number>,
  shared: Map<string, number>,
  names: Iterable<string | null>,
  by: 1 | -1,
): { readonly counts: Map<string, number>; readonly shared: Map<string, number> } {
  for (const name of names) {
    if (name === null) continue;
    const count = (counts.get(name) ?? 0) + by;
    if (count > 0) counts.set(name, count);
    else counts.delete(name);
    if (count > 1) shared.set(name, count);
    else shared.delete(name);
  }
  return { counts, shared };
}

/** A look at the text of the header, since all orders of a file are asked and few of them have been parsed. */
const HEADER = /^[ \t]*order[ \t]+(?:"((?:[^"]|"")*)"|([^\s"#]+))/i;

/** The name of an order by the look of its header; null for a block that is none. */
export const nameOfBlock = ({ kind, lines }: Block): string | null =>
  kind === 'order' ? nameInHeader(lines[0]?.text ?? '') : null;

/** The name in the first line of an order, or null. */
export function nameInHeader(line: string): string | null {
  const found = HEADER.exec(line);
  return found?.[1]?.replaceAll('""', '"') ?? found?.[2] ?? null;
}
