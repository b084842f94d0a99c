/** Where in the notation the cursor stands, told from its own line and from the lines of its block above it. */
import { type Block, commentStart, indentOf, type Line, lineWord, type Span, sectionsOf } from '../../../grammar';
import type { Site } from '../../snapshot';

/** What kind of lines stand here; `file` is above all blocks and in a block that could not be named. */
export type Room = 'file' | 'order' | 'reading' | 'instrument' | 'defaults' | 'tolerance';

export interface Cursor extends Site {
  readonly text: string;
  /** Where a line that is begun here would belong. */
  readonly room: Room;
  /** Whether the line stands no deeper than the reading above it, so that it may just as well be the order’s. */
  readonly leavesReading: boolean;
  /** Where the line as it stands belongs. */
  readonly lineRoom: Room;
  /** The letters that the cursor stands in or behind, to be replaced as one. */
  readonly word: Span;
  /** The same up to the next blanks, for names, which may hold anything else. */
  readonly name: Span;
}

/** Null where nothing is to be offered: in a comment, in a quoted text, and right behind one. */
export function cursorAt(block: Block, site: Site): Cursor | null {
  const { text } = block.lines[site.line] as Line;
  const before = text.slice(0, site.character);
  const isInQuotes = before === before.trimEnd() ? isQuoted(partsIn(before).at(-1)) : isOpen(partsIn(before).at(-1));
  if (commentStart(before) < before.length || isInQuotes) return null;
  const word = spanAround(text, site.character, /[\p{L}-]/u);
  const start = word.start + (/^-*/.exec(text.slice(word.start, site.character))?.[0].length ?? 0);
  const cut = commentStart(text);
  const name = spanAround(text, site.character, /[^\s"“”„«»]/);
  return {
    ...site,
    text,
    ...roomsAt(block, site.line, indentOf(before)),
    word: { ...word, start },
    name: { ...name, end: Math.max(site.character, Math.min(name.end, cut)) },
  };
}

/** What stands in front of a column, part by part, in lower case. */
export const partsBefore = (text: string, column: number): string[] =>
  partsIn(text.slice(0, column)).map((part) => part.toLowerCase());

/** Quoted texts, figures, arrows and words as they touch one another; dates and names fall into several parts. */
const PART =
  /"(?:[^"]|"")*"?|[“„][^“”]*[“”]?|«[^»]*»?|-+>|[-+\u2010-\u2015\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)|\p{L}+(?:-\p{L}+)*|\S/gu;

const partsIn = (text: string): string[] => text.match(PART) ?? [];

const isQuoted = (part: string | undefined): boolean => part !== undefined && /^["“„«]/.test(part);

/** Whether a quoted text goes on; inside straight quotes a quote mark is written twice. */
const isOpen = (part = ''): boolean =>
  part.startsWith('"') ? part.replace(/[^"]/g, '').length % 2 === 1 : isQuoted(part) && !/.[“”»]$/.test(part);

export const isFigure = (part: string): boolean => /^[-+\u2010-\u2015\u2212]?[.,]?\d/.test(part);

/** The run of characters of one kind on both sides of a column. */
function spanAround(text: string, column: number, kind: RegExp): Span {
  let [start, end] = [column, column];
  while (start > 0 && kind.test(text[start - 1] as string)) start--;
  while (end < text.length && kind.test(text[end] as string)) end++;
  return { start, end };
}

function roomsAt(block: Block, line: number, indent: number): Pick<Cursor, 'room' | 'leavesReading' | 'lineRoom'> {
  if (block.kind !== 'order') {
    const room = block.kind === 'preamble' || block.kind === 'unnamed' ? 'file' : block.kind;
    return { room, leavesReading: false, lineRoom: room };
  }
  const sections = sectionsOf(block).map(({ kind }) => kind);
  const above = sections.findLastIndex((kind, at) => at < line && kind !== 'none' && kind !== 'file');
  const isBelowReading = sections[above] === 'reading' || sections[above] === 'reading-header';
  const header = sections.lastIndexOf('reading-header', Math.max(0, line - 1));
  const room = isBelowReading ? 'reading' : 'order';
  const own = sections[line];
  return {
    room,
    leavesReading: isBelowReading && indent <= indentOf(block.lines[header]?.text ?? ''),
    lineRoom: own === 'none' || own === undefined ? room : own === 'reading' ? 'reading' : 'order',
  };
}

/** The word at the head of the parts of a line, in its canonical spelling; what is measured again stands behind `again`. */
export function headOf(parts: readonly string[]): string | null {
  const [first = '', second = ''] = parts;
  const word = lineWord(first)?.word ?? null;
  return word === 'again' && parts.length > 1 ? (lineWord(second)?.word ?? word) : word;
}
