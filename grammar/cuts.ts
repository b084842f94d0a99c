/**
 * Where the blocks of a long text stand, found without making a line of it. A year of work is judged block by block: each
 * is made when its turn comes and let go afterwards, so that memory does not grow with the text.
 */
import { opensBlock, type StoreBlockKind } from './blocks';
import { Block, Line } from './document';
import { indentOf, LineEnds, lineEndAt, splitLines, stripByteOrderMark } from './text';

/** A text, or a run of its blocks, as plain data that can be handed to another thread. */
export interface Cuts {
  readonly text: string;
  readonly kinds: readonly StoreBlockKind[];
  /** Offset of each block, and the end of the last one. */
  readonly starts: readonly number[];
  /** Number of the first line of each block in the whole text. */
  readonly firstLines: readonly number[];
  /** Whether the last block ends the whole text; an empty last line belongs to it then. */
  readonly isEnd: boolean;
}

/** The cuts of a whole text: the same blocks as `parseDocument` makes. */
export function cutsOf(whole: string): Cuts {
  const { text } = stripByteOrderMark(whole);
  const kinds: StoreBlockKind[] = [];
  const starts: number[] = [];
  const firstLines: number[] = [];
  const add = (kind: StoreBlockKind, start: number, line: number): void => {
    kinds.push(kind);
    starts.push(start);
    firstLines.push(line);
  };
  let line = 0;
  const ends = new LineEnds(text);
  for (let start = 0, next = 0; start <= text.length; start = next, line++) {
    const end = ends.from(start);
    next = end + (lineEndAt(text, end).length || 1);
    const kind = mayOpen(text, start) ? opensBlock(text.slice(start, end)) : null;
    if (kind !== null) add(kind, start, line);
    else if (line === 0) add('preamble', 0, 0);
  }
  starts.push(text.length);
  return { text, kinds, starts, firstLines, isEnd: true };
}

/** The run of blocks from one up to another, with a text of its own. */
export function partOf({ text, kinds, starts, firstLines, isEnd }: Cuts, from: number, to: number): Cuts {
  const first = starts[from] as number;
  return {
    text: text.slice(first, starts[to]),
    kinds: kinds.slice(from, to),
    starts: starts.slice(from, to + 1).map((start) => start - first),
    firstLines: firstLines.slice(from, to),
    isEnd: isEnd && to === kinds.length,
  };
}

/** Makes one block with its lines. */
export function blockAt(cuts: Cuts, at: number): Block {
  const lines = splitLines(textAt(cuts, at)).map(({ text, end }) => new Line(text, end));
  if (!cuts.isEnd || at < cuts.kinds.length - 1) lines.pop();
  return new Block(cuts.kinds[at] as StoreBlockKind, lines);
}

/** The text of one block. */
export const textAt = ({ text, starts }: Cuts, at: number): string => text.slice(starts[at], starts[at + 1]);

/** A look at the first letter alone, since nearly no line opens a block: below the margin only the block words do. */
function mayOpen(text: string, start: number): boolean {
  const indent = start + indentOf(text, start);
  const head = text.charCodeAt(indent) | 32;
  return indent > start ? HEADS.has(head) : head >= 97 && head <= 122;
}

const HEADS = new Set(['order', 'instrument', 'defaults', 'tolerance'].map((word) => word.charCodeAt(0)));
