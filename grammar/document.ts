/**
 * The block store. A document is a list of blocks, a block is a list of lines, and both are immutable: an edit returns
 * a new document that shares every untouched block, line and parsed tree with the old one. Lines know no position and
 * blocks know no offset, so text above can change for free.
 */
import { opensBlock, type StoreBlockKind } from './blocks';
import { parsedLine } from './line-memo';
import {
  BYTE_ORDER_MARK,
  type LineEnd,
  type Position,
  type Range,
  type RawLine,
  splitLines,
  stripByteOrderMark,
} from './text';
import type { ParsedLine } from './tree';

/** One line of text with its tree, which is made when first asked for and then kept. */
export class Line {
  readonly text: string;
  readonly end: LineEnd;
  private plainTree: ParsedLine | undefined;
  private toleranceTree: ParsedLine | undefined;

  constructor(text: string, end: LineEnd) {
    this.text = text;
    this.end = end;
  }

  /** The tree of this line; only the lines of a tolerance block read differently from the rest. */
  parsed(block: StoreBlockKind): ParsedLine {
    if (block === 'tolerance') {
      this.toleranceTree ??= parsedLine(this.text, true);
      return this.toleranceTree;
    }
    this.plainTree ??= parsedLine(this.text, false);
    return this.plainTree;
  }
}

export class Block {
  readonly kind: StoreBlockKind;
  readonly lines: readonly Line[];
  /**
   * What others worked out from this block, under keys of their own. It goes when the block goes; a weak map from blocks
   * would do the same, but costs the garbage collector far more in a file of thousands of orders.
   */
  readonly memo = new Map<symbol, unknown>();

  constructor(kind: StoreBlockKind, lines: readonly Line[]) {
    this.kind = kind;
    this.lines = lines;
  }
}

export class LentilDocument {
  readonly blocks: readonly Block[];
  /** Whether the text began with a byte order mark; it is kept and never counted. */
  readonly byteOrderMark: boolean;
  private startsMemo: Int32Array | undefined;

  constructor(blocks: readonly Block[], byteOrderMark: boolean) {
    this.blocks = blocks;
    this.byteOrderMark = byteOrderMark;
  }

  /** Number of the first line of each block, and the number of all lines at the end. */
  get starts(): Int32Array {
    if (!this.startsMemo) {
      const starts = new Int32Array(this.blocks.length + 1);
      for (let at = 0; at < this.blocks.length; at++)
        starts[at + 1] = (starts[at] as number) + (this.blocks[at] as Block).lines.length;
      this.startsMemo = starts;
    }
    return this.startsMemo;
  }

  get lineCount(): number {
    return this.starts[this.blocks.length] as number;
  }

  /** Index of the block that holds a line; a line past the end counts as the last one. */
  blockAt(line: number): number {
    const starts = this.starts;
    let low = 0;
    let high = this.blocks.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= line) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** The line of a number, counted from 0; undefined beyond the ends. */
  line(number: number): Line | undefined {
    if (number < 0 || number >= this.lineCount) return undefined;
    const block = this.blockAt(number);
    return this.blocks[block]?.lines[number - (this.starts[block] as number)];
  }

  /** The whole text, with its own line ends and its byte order mark. */
  text(): string {
    const parts: string[] = this.byteOrderMark ? [BYTE_ORDER_MARK] : [];
    for (const { lines } of this.blocks) for (const { text, end } of lines) parts.push(text, end);
    return parts.join('');
  }

  /** The text between two positions, which are drawn in to the text. */
  slice(range: Range): string {
    const { start, end } = this.clampRange(range);
    const parts: string[] = [];
    for (let at = start.line; at <= end.line; at++) {
      const line = this.line(at) as Line;
      const from = at === start.line ? start.character : 0;
      parts.push(at === end.line ? line.text.slice(from, end.character) : line.text.slice(from) + line.end);
    }
    return parts.join('');
  }

  /**
   * The document with a range replaced. Positions outside the text are drawn in to it, as the language-server
   * protocol asks. Only the blocks that the range touches are cut anew.
   */
  edit(range: Range, text: string): LentilDocument {
    const { start, end } = this.clampRange(range);
    // A line end CR before the edit could join with a LF that the edit brings to the front of the next line.
    const from = start.line > 0 && (this.line(start.line - 1) as Line).end === '\r' ? start.line - 1 : start.line;
    const head = from < start.line ? `${(this.line(from) as Line).text}\r` : '';
    const first = this.line(start.line) as Line;
    const tail = this.line(end.line) as Line;
    const joined = head + first.text.slice(0, start.character) + text + tail.text.slice(end.character) + tail.end;

    // The first line of a block decides where the block above ends, so that block is cut anew with it.
    let firstBlock = this.blockAt(from);
    if (firstBlock > 0 && this.starts[firstBlock] === from) firstBlock--;
    const lastBlock = this.blockAt(end.line);
    const lines: Line[] = [];
    this.copy(lines, firstBlock, from);
    const fresh = splitLines(joined);
    // When the joined text ends with a line end, the empty rest is no line unless the text ends here.
    const atEnd = end.line === this.lineCount - 1;
    if (!atEnd && fresh.at(-1)?.text === '' && fresh.at(-1)?.end === '') fresh.pop();
    for (const line of this.reuse(fresh, from, end.line)) lines.push(line);
    const stop = this.starts[lastBlock + 1] as number;
    for (let at = end.line + 1; at < stop; at++) lines.push(this.line(at) as Line);

    const known = new Map(this.blocks.slice(firstBlock, lastBlock + 1).map((block) => [block.lines[0], block]));
    const cut = cutIntoBlocks(lines).map((block) => {
      const old = known.get(block.lines[0]);
      return old && isSame(old, block) ? old : block;
    });
    return new LentilDocument(
      [...this.blocks.slice(0, firstBlock), ...cut, ...this.blocks.slice(lastBlock + 1)],
      this.byteOrderMark,
    );
  }

  /** Both ends inside the text, the earlier one first. */
  private clampRange(range: Range): Range {
    const start = this.clamp(range.start);
    const end = this.clamp(range.end);
    return isBefore(end, start) ? { start: end, end: start } : { start, end };
  }

  private copy(lines: Line[], firstBlock: number, upTo: number): void {
    for (let at = this.starts[firstBlock] as number; at < upTo; at++) lines.push(this.line(at) as Line);
  }

  /** Lines of the new text; one that is written anew as it was keeps its tree. */
  private reuse(fresh: readonly RawLine[], from: number, to: number): Line[] {
    const old: Line[] = [];
    for (let at = from; at <= to; at++) old.push(this.line(at) as Line);
    const isKept = (line: Line | undefined, raw: RawLine | undefined): boolean =>
      line !== undefined && raw !== undefined && line.text === raw.text && line.end === raw.end;
    let above = 0;
    while (isKept(old[above], fresh[above])) above++;
    let below = 0;
    const most = Math.min(old.length, fresh.length) - above;
    while (below < most && isKept(old.at(-1 - below), fresh.at(-1 - below))) below++;
    // Between the lines that stayed in place, the text alone tells which line is meant.
    const moved = new Map(old.slice(above, old.length - below).map((line) => [line.text + line.end, line]));
    return fresh.map(({ text, end }, at) => {
      if (at < above) return old[at] as Line;
      if (at >= fresh.length - below) return old[at - fresh.length + old.length] as Line;
      return moved.get(text + end) ?? new Line(text, end);
    });
  }

  private clamp({ line, character }: Position): Position {
    if (line < 0) return { line: 0, character: 0 };
    if (line >= this.lineCount) {
      const last = this.lineCount - 1;
      return { line: last, character: (this.line(last) as Line).text.length };
    }
    return { line, character: Math.max(0, Math.min(character, (this.line(line) as Line).text.length)) };
  }
}

const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);

/** Whether a block cut anew holds the very lines of an old one, which then stays with all that was worked out from it. */
const isSame = (one: Block, other: Block): boolean =>
  one.kind === other.kind &&
  one.lines.length === other.lines.length &&
  one.lines.every((line, at) => line === other.lines[at]);

/** Reads a whole text. */
export function parseDocument(text: string): LentilDocument {
  const stripped = stripByteOrderMark(text);
  const lines = splitLines(stripped.text).map(({ text: content, end }) => new Line(content, end));
  return new LentilDocument(cutIntoBlocks(lines), stripped.mark);
}

/** Lines before the first block word are a preamble; there is always at least one block. */
function cutIntoBlocks(lines: readonly Line[]): Block[] {
  const blocks: Block[] = [];
  let kind: StoreBlockKind = 'preamble';
  let current: Line[] = [];
  for (const line of lines) {
    const opens = opensBlock(line.text);
    if (opens !== null) {
      if (current.length > 0) blocks.push(new Block(kind, current));
      kind = opens;
      current = [];
    }
    current.push(line);
  }
  blocks.push(new Block(kind, current));
  return blocks;
}
