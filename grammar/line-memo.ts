/**
 * Remembers the trees of lines by their text. Lines know no position and are parsed alone, so two lines that read the
 * same share one tree; in a file of many orders most lines stand somewhere else as well (`supply glazed`, `pd 63 near 60`).
 */
import { parseLine } from './parser';
import type { ParsedLine } from './tree';

/**
 * Lines of a generation. What returns at all returns within a few hundred orders; whatever is kept longer only costs the
 * garbage collector.
 */
const MOST = 500;

/** Long lines hardly return, and would keep their text alive. */
const LONGEST = 120;

/** Two generations of lines: when the newer one is full it becomes the older one, and what was never asked for again goes. */
class LineMemo {
  readonly #block: 'tolerance' | undefined;
  #newer = new Map<string, ParsedLine>();
  #older = new Map<string, ParsedLine>();

  constructor(block?: 'tolerance') {
    this.#block = block;
  }

  parsed(text: string): ParsedLine {
    const found = this.#newer.get(text);
    if (found) return found;
    const parsed = this.#older.get(text) ?? parseLine(text, this.#block);
    if (text.length <= LONGEST) this.#keep(text, parsed);
    return parsed;
  }

  #keep(text: string, parsed: ParsedLine): void {
    if (this.#newer.size >= MOST) {
      this.#older = this.#newer;
      this.#newer = new Map();
    }
    this.#newer.set(text, parsed);
  }
}

const plain = new LineMemo();
const tolerance = new LineMemo('tolerance');

/** The tree of a line; see `parseLine`. */
export const parsedLine = (text: string, inTolerance: boolean): ParsedLine =>
  (inTolerance ? tolerance : plain).parsed(text);
