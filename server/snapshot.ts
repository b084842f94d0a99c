/**
 * One version of one document with its meaning. A snapshot never changes; its blocks are analysed when first asked for,
 * and what an edit leaves alone is handed on to the next snapshot, so that work after a keystroke does not grow with
 * the file.
 */
import type { Position, Range } from 'vscode-languageserver';
import {
  analyseBlock,
  type Block,
  type BlockAnalysis,
  type Choices,
  type Context,
  carryContributors,
  contextOf,
  type Finding,
  type LentilDocument,
  type Level,
  type Place,
} from '../orders';
import { fromEditor, toEditor } from './text-changes';

export type Tally = Readonly<Record<Level, number>>;

/** The level at which an editor shows a finding; `off` shows none. */
export type ShownLevel = Level | 'off';

/** What the orders of a document rest on besides its own text, and how their findings are shown. */
export interface Surroundings extends Choices {
  readonly shared: readonly LentilDocument[];
  /** Levels that the user has chosen for single codes. */
  readonly levels?: ReadonlyMap<string, ShownLevel>;
}

/** A place in the text, by block. */
export interface Site {
  readonly block: number;
  /** Counted from the first line of the block. */
  readonly line: number;
  readonly character: number;
}

export class Snapshot {
  readonly uri: string;
  readonly version: number;
  readonly document: LentilDocument;
  /** Line of the last edit; the first one of a document that was only opened. */
  readonly edited: number;
  readonly #surroundings: Surroundings;
  readonly #context: Context;
  readonly #blocks: (BlockAnalysis | undefined)[];
  readonly #tally: Record<Level, number>;
  readonly #levels: Uint8Array;
  #unknown: number;
  #next = 0;

  private constructor(
    at: Pick<Snapshot, 'uri' | 'version' | 'document' | 'edited'>,
    surroundings: Surroundings,
    context: Context,
    known: Known,
  ) {
    this.uri = at.uri;
    this.version = at.version;
    this.document = at.document;
    this.edited = at.edited;
    this.#surroundings = surroundings;
    this.#context = context;
    this.#blocks = known.blocks;
    this.#tally = known.tally;
    this.#levels = known.levels;
    this.#unknown = known.unknown;
  }

  static of(uri: string, version: number, document: LentilDocument, surroundings: Surroundings): Snapshot {
    const context = contextOf(document, surroundings, surroundings.shared);
    return new Snapshot({ uri, version, document, edited: 0 }, surroundings, context, nothing(document.blocks.length));
  }

  /** The snapshot of the document after an edit. */
  after(document: LentilDocument, version: number, edited: number): Snapshot {
    const at = { uri: this.uri, version, document, edited };
    const [head, tail] = sharedEnds(this.document.blocks, document.blocks);
    const touched = carryContributors(this.document, document, head, tail);
    const context = touched ? contextOf(document, this.#surroundings, this.#surroundings.shared) : this.#context;
    const known = isSame(context, this.#context)
      ? this.#without(head, this.document.blocks.length - tail, document.blocks.length - head - tail)
      : nothing(document.blocks.length);
    return new Snapshot(at, this.#surroundings, context, known);
  }

  /** The same text in other surroundings. */
  within(surroundings: Surroundings): Snapshot {
    const context = contextOf(this.document, surroundings, surroundings.shared);
    const isKept = isSame(context, this.#context) && surroundings.levels === this.#surroundings.levels;
    const known = isKept ? this.#without(0, 0, 0) : nothing(this.#blocks.length);
    return new Snapshot(this, surroundings, context, known);
  }

  /** What the orders of the document may refer to: instruments, tolerances, defaults. */
  get context(): Context {
    return this.#context;
  }

  block(index: number): BlockAnalysis {
    const known = this.#blocks[index];
    if (known) return known;
    const analysed = analyseBlock(this.document.blocks[index] as Block, this.#context);
    this.#blocks[index] = analysed;
    this.#unknown--;
    this.#count(analysed, 1, this.#tally);
    this.#levels[index] = this.#levelsIn(analysed);
    return analysed;
  }

  /** A block that has been analysed already, or undefined. */
  known(index: number): BlockAnalysis | undefined {
    return this.#blocks[index];
  }

  /** The level at which a finding is shown. */
  shownLevel({ code, level }: Finding): ShownLevel {
    return this.#surroundings.levels?.get(code) ?? level;
  }

  /** The blocks that have a finding shown at a level, from one block outwards, as far as they have been analysed. */
  *outwards(from: number, level: Level): Generator<number> {
    const levels = this.#levels;
    const bit = BITS[level];
    const farthest = Math.max(from, levels.length - 1 - from);
    for (let step = 0; step <= farthest; step++) {
      if (from >= step && (levels[from - step] as number) & bit) yield from - step;
      if (step > 0 && from + step < levels.length && (levels[from + step] as number) & bit) yield from + step;
    }
  }

  /** How many findings are shown at each level in the blocks analysed so far. */
  get tally(): Tally {
    return this.#tally;
  }

  get isComplete(): boolean {
    return this.#unknown === 0;
  }

  /** Analyses blocks until all are known or the time is up, the edited one first. */
  analyseFor(milliseconds: number): void {
    const stop = performance.now() + milliseconds;
    this.block(this.document.blockAt(this.edited));
    while (this.#unknown > 0 && performance.now() < stop) {
      while (this.#blocks[this.#next]) this.#next++;
      this.block(this.#next);
    }
  }

  /** The same snapshot with every block analysed. */
  analysed(): this {
    this.analyseFor(Number.POSITIVE_INFINITY);
    return this;
  }

  /** A place of a block as the editor counts it. */
  range(block: number, { line, start, end }: Place): Range {
    const number = this.firstLine(block) + line;
    return toEditor(this.document, {
      start: { line: number, character: start },
      end: { line: number, character: end },
    });
  }

  /** Where the editor’s place lies; places outside the text are drawn in to it. */
  site(position: Position): Site {
    const { line, character } = fromEditor(this.document, position);
    const number = Math.max(0, Math.min(line, this.document.lineCount - 1));
    const block = this.document.blockAt(number);
    return { block, line: number - this.firstLine(block), character };
  }

  firstLine(block: number): number {
    return this.document.starts[block] as number;
  }

  /** What is known, with the blocks from `start` to `end` replaced by so many that are not. */
  #without(start: number, end: number, come: number): Known {
    const tally = { ...this.#tally };
    let unknown = this.#unknown + come;
    for (let index = start; index < end; index++) {
      const block = this.#blocks[index];
      if (!block) unknown--;
      else this.#count(block, -1, tally);
    }
    const blocks = this.#blocks.slice();
    blocks.splice(start, end - start, ...new Array<undefined>(come).fill(undefined));
    const levels = new Uint8Array(blocks.length);
    levels.set(this.#levels.subarray(0, start));
    levels.set(this.#levels.subarray(end), start + come);
    return { blocks, tally, levels, unknown };
  }

  #levelsIn({ findings }: BlockAnalysis): number {
    let bits = 0;
    for (const finding of findings) {
      const level = this.shownLevel(finding);
      if (level !== 'off') bits |= BITS[level];
    }
    return bits;
  }

  #count({ findings }: BlockAnalysis, by: 1 | -1, tally: Record<Level, number>): void {
    for (const finding of findings) {
      const level = this.shownLevel(finding);
      if (level !== 'off') tally[level] += by;
    }
  }
}

const BITS: Readonly<Record<Level, number>> = { error: 1, warning: 2, info: 4, hint: 8 };

/** What has been analysed so far. */
interface Known {
  readonly blocks: (BlockAnalysis | undefined)[];
  readonly tally: Record<Level, number>;
  /** The levels that the findings of each block are shown at, one bit each. */
  readonly levels: Uint8Array;
  readonly unknown: number;
}

const nothing = (count: number): Known => ({
  blocks: new Array<undefined>(count).fill(undefined),
  tally: { error: 0, warning: 0, info: 0, hint: 0 },
  levels: new Uint8Array(count),
  unknown: count,
});

/** How many blocks two lists share at their beginnings and at their ends. */
function sharedEnds(before: readonly Block[], after: readonly Block[]): readonly [number, number] {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return [head, tail];
}

/** Compares whatever a context holds, so that nothing which is added to it can be overlooked here. */
function isSame(a: Context, b: Context): boolean {
  if (a === b) return true;
  const others: Readonly<Record<string, unknown>> = { ...b };
  return Object.entries(a).every(([key, value]) => {
    const other = others[key];
    if (!(value instanceof Map) || !(other instanceof Map)) return value === other;
    return value.size === other.size && [...value].every(([name, entry]) => other.get(name) === entry);
  });
}
