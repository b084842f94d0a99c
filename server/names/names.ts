/** The names in a block that other blocks and files may speak of: where they are given, and where they are used. */
import { type Block, type Line, type LineNode, type ParsedLine, parseLine } from '../../grammar';
import type { Place } from '../../orders';

export type NameKind = 'order' | 'instrument' | 'tolerance';

export interface Named extends Place {
  readonly kind: NameKind;
  readonly name: string;
  /** Given here, not only used. */
  readonly isDefinition: boolean;
}

const NAMES = Symbol('names');

/** The names of a block in the order of its lines, kept with it, so that after an edit only touched blocks are read again. */
export function namesOf(block: Block): readonly Named[] {
  let known = block.memo.get(NAMES) as readonly Named[] | undefined;
  if (!known) {
    known = namesBy(block, (line) => line.parsed(block.kind));
    block.memo.set(NAMES, known);
  }
  return known;
}

/** The same for a text that is looked through once and let go: nothing of it is kept but the names. */
export const namesOnce = (block: Block): readonly Named[] =>
  namesBy(block, ({ text }) => parseLine(text, blockOf(block.kind))).map((one) => ({
    ...one,
    name: detached(one.name),
  }));

/** A part of a text is kept by its engine together with the whole text; letters put together anew are not. */
const detached = (name: string): string => Array.from(name).join('');

const namesBy = (block: Block, parsed: (line: Line) => ParsedLine): Named[] =>
  block.lines.flatMap((line, at) =>
    MAY_NAME.test(line.text) ? namesIn(parsed(line)).map((one) => ({ ...one, line: at })) : [],
  );

const blockOf = (kind: Block['kind']) => (kind === 'tolerance' ? kind : undefined);

/** Cheap test before a parse: only lines that hold one of these words can hold a name. A figure may touch the word. */
const MAY_NAME = /order|instrument|tolerance|standard|reading|remake-of|with/i;

type InLine = Omit<Named, 'line'>;

function namesIn({ node }: ParsedLine): InLine[] {
  const used = node.qualifiers?.with;
  const here = byKind(node);
  return used ? [...here, ...named('instrument', used, false)] : here;
}

function byKind(node: LineNode): InLine[] {
  switch (node.kind) {
    case 'order':
    case 'instrument':
      return named(node.kind, node.name, true);
    case 'tolerance':
      return [...named('tolerance', node.name, true), ...named('tolerance', node.from, false)];
    case 'standard':
      return named('tolerance', node.name, false);
    case 'reading':
      return named('instrument', node.with, false);
    case 'remake-of':
      return named('order', node.name, false);
    default:
      return [];
  }
}

function named(
  kind: NameKind,
  name: { readonly text: string; readonly start: number; readonly end: number } | null,
  isDefinition: boolean,
): InLine[] {
  if (!name || name.text.trim() === '') return [];
  const { text, start, end } = name;
  return [{ kind, name: text, isDefinition, start, end }];
}

/** Every way in which a line can speak of a name of each kind, with something behind it where something may stand. */
const LINES: Readonly<Record<NameKind, readonly string[]>> = {
  order: ['order ~', 'remake-of ~ "axis"'],
  instrument: ['instrument ~', 'reading 2026-11-24 with ~ stage final', 'R -1.00 with ~ corrected'],
  tolerance: ['tolerance ~ from ~', 'standard ~'],
};

/** How a name is written: bare, in quotes where it would not be read as one name, or null where it cannot be written. */
export function writtenName(kind: NameKind, name: string): string | null {
  if (name.trim() === '' || /[\r\n]/.test(name)) return null;
  const isRead = (written: string): boolean =>
    LINES[kind].every((line) => {
      const { length } = line.split('~');
      const found = namesIn(
        parseLine(
          line.replaceAll('~', () => written),
          kind === 'tolerance' ? kind : undefined,
        ),
      );
      return found.length === length - 1 && found.every((one) => one.kind === kind && one.name === name);
    });
  return [name, `"${name.replaceAll('"', '""')}"`].find(isRead) ?? null;
}
