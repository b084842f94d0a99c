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
  type Context,
  contextOf,
  LentilDocument,
  type Level,
  type Place,
} from '../orders';
import { fromEditor, toEditor } from './text-changes';

export type Tally = Readonly<Record<Level, number>>;

/** What the orders of a document rest on besides its own text. */
export interface Surroundings {
  readonly standard: string | null;
  readonly shared: readonly LentilDocument[];
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
  readonly #tally: Record<Level, number> = { error: 0, warning: 0, info: 0, hint: 0 };
  #unknown = 0;
  #next = 0;

  private constructor(
    at: Pick<Snapshot, 'uri' | 'version' | 'document' | 'edited'>,
    surroundings: Surroundings,
    context: Context,
    known: (BlockAnalysis | undefined)[],
  ) {
    this.uri = at.uri;
    this.version = at.version;
    this.document = at.document;
    this.edited = at.edited;
    this.#surroundings = surroundings;
    this.#context = context;
    this.#blocks = known;
    for (const block of known) {
      if (block) this.#count(block);
      else this.#unknown++;
    }
  }

  static of(uri: string, version: number, document: LentilDocument, surroundings: Surroundings): Snapshot {
    return new Snapshot(
      { uri, version, document, edited: 0 },
      surroundings,
      contextOf(document, surroundings.standard, surroundings.shared),
      new Array(document.blocks.length).fill(undefined),
    );
  }

  /** The snapshot of the document after an edit. */
  after(document: LentilDocument, version: number, edited: number): Snapshot {
    const { uri } = this;
    const [head, tail] = sharedEnds(this.document.blocks, document.blocks);
    const gone = this.document.blocks.slice(head, this.document.blocks.length - tail);
    const come = document.blocks.slice(head, document.blocks.length - tail);
    const context = contributes(gone) || contributes(come) ? this.#contextOf(document) : this.#context;
    const keep = isSame(context, this.#context);
    const known = [
      ...(keep ? this.#blocks.slice(0, head) : new Array(head).fill(undefined)),
      ...new Array(come.length).fill(undefined),
      ...(keep ? this.#blocks.slice(this.#blocks.length - tail) : new Array(tail).fill(undefined)),
    ];
    return new Snapshot({ uri, version, document, edited }, this.#surroundings, context, known);
  }

  /** The same text in other surroundings. */
  within(surroundings: Surroundings): Snapshot {
    const context = contextOf(this.document, surroundings.standard, surroundings.shared);
    const known = isSame(context, this.#context) ? this.#blocks : new Array(this.#blocks.length).fill(undefined);
    return new Snapshot(this, surroundings, context, [...known]);
  }

  block(index: number): BlockAnalysis {
    const known = this.#blocks[index];
    if (known) return known;
    const analysed = analyseBlock(this.document.blocks[index] as Block, this.#context);
    this.#blocks[index] = analysed;
    this.#unknown--;
    this.#count(analysed);
    return analysed;
  }

  /** A block that has been analysed already, or undefined. */
  known(index: number): BlockAnalysis | undefined {
    return this.#blocks[index];
  }

  /** How many findings there are at each level in the blocks analysed so far. */
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

  #contextOf(document: LentilDocument): Context {
    return contextOf(document, this.#surroundings.standard, this.#surroundings.shared);
  }

  #count({ findings }: BlockAnalysis): void {
    for (const { level } of findings) this.#tally[level]++;
  }
}

/** How many blocks two lists share at their beginnings and at their ends. */
function sharedEnds(before: readonly Block[], after: readonly Block[]): readonly [number, number] {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return [head, tail];
}

/** Whether blocks say anything that other blocks rest on: a standard, defaults, an instrument. */
function contributes(blocks: readonly Block[]): boolean {
  const { standard, defaults, instruments } = contextOf(new LentilDocument(blocks, false), null);
  return standard !== null || defaults !== null || instruments.size > 0;
}

const isSame = (a: Context, b: Context): boolean =>
  a === b ||
  (a.standard?.name === b.standard?.name &&
    a.fallbackStandard === b.fallbackStandard &&
    a.defaults === b.defaults &&
    a.instruments.size === b.instruments.size &&
    [...a.instruments].every(([name, instrument]) => b.instruments.get(name) === instrument));
