/**
 * Remembers the trees of lines by their text. Lines know no position and are parsed alone, so two lines that read the
 * same share one tree; in a file of many orders most lines stand somewhere else as well (`supply glazed`, `pd 63 near 60`).
 */
import { parseLine } from './parser';
import type { ParsedLine } from './tree';

/** Lines of a generation: those of a few thousand orders that return. Kept longer, they would cost the collector for nothing. */
const MOST = 1000;

/** Long lines hardly return, and would keep their text alive. */
const LONGEST = 120;

/** Marks of lines that came once, a power of two: the last few hundred orders. */
const MARKS = 4096;

/**
 * Two generations of lines: when the newer one is full it becomes the older one, and what was never asked for again goes. A
 * line is kept from its second coming on, since most that come once (`R -2.25 -0.50 x 047`) come never again, and trees
 * that are kept for nothing cost the collector more than reading a line twice.
 */
class LineMemo {
  readonly #block: 'tolerance' | undefined;
  readonly #cameOnce = new Int32Array(MARKS);
  #newer = new Map<string, ParsedLine>();
  #older = new Map<string, ParsedLine>();

  constructor(block?: 'tolerance') {
    this.#block = block;
  }

  parsed(text: string): ParsedLine {
    const found = this.#newer.get(text);
    if (found) return found;
    const kept = this.#older.get(text);
    const parsed = kept ?? parseLine(text, this.#block);
    if (kept || (text.length <= LONGEST && this.#comesAgain(text))) this.#keep(text, parsed);
    return parsed;
  }

  /** Two lines may have one mark; then one is kept too early, which does no harm. */
  #comesAgain(text: string): boolean {
    const mark = markOf(text);
    const at = mark & (MARKS - 1);
    const comesAgain = this.#cameOnce[at] === mark;
    this.#cameOnce[at] = mark;
    return comesAgain;
  }

  #keep(text: string, parsed: ParsedLine): void {
    if (this.#newer.size >= MOST) {
      this.#older = this.#newer;
      this.#newer = new Map();
    }
    this.#newer.set(text, parsed);
  }
}

/** FNV-1a, which spreads short texts well. */
function markOf(text: string): number {
  let mark = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) mark = Math.imul(mark ^ text.charCodeAt(at), 0x01000193);
  return mark;
}

const plain = new LineMemo();
const tolerance = new LineMemo('tolerance');

/** The tree of a line; see `parseLine`. */
export const parsedLine = (text: string, inTolerance: boolean): ParsedLine =>
  (inTolerance ? tolerance : plain).parsed(text);
