import type { BlockAnalysis } from '../../orders';

/**
 * Turns findings and verdicts into text piece by piece, so that a block can be dropped as soon as it is written. The
 * pieces are asked for in order: `start`, then for each file `openFile`, its blocks or parts, `closeFile`; `unreadable`
 * stands for a whole file; `end` comes last.
 */
export interface FindingsWriter<N = unknown> {
  /** What stands before every file. */
  start(): string;
  /** What stands before the blocks of a file. */
  openFile(path: string): string;
  /**
   * Begins some blocks in a row. They rest on nothing told before, so that any thread can write them.
   * @param strict whether warnings fail as well, where that is told
   */
  part(path: string, strict?: boolean): PartWriter<N>;
  /** Takes note of the next part of the open file, and gives what stands before its text. */
  add(note: N): string;
  /** A part of one block. */
  block(analysis: BlockAnalysis, firstLine: number): string;
  /** What stands behind the blocks of a file. */
  closeFile(): string;
  /** The same bit by bit, since it may be long. */
  closing(): Iterable<string>;
  /** What stands for a file that could not be read. */
  unreadable(path: string, error: string): string;
  /** What stands behind every file. */
  end(): string;
}

/** Writes some blocks in a row of one file. */
export interface PartWriter<N> {
  /**
   * The text of the next block, which goes out as soon as the parts before it have.
   * @param firstLine number of the block’s first line in its file
   */
  block(analysis: BlockAnalysis, firstLine: number): string;
  /** What is left to tell of all these blocks, as plain data for `add`. */
  note(): N;
}

/** A writer from its parts. */
export function writerOf<N>(parts: Omit<FindingsWriter<N>, 'block' | 'closeFile'>): FindingsWriter<N> {
  let path = '';
  return {
    ...parts,
    openFile: (opened) => {
      path = opened;
      return parts.openFile(opened);
    },
    block: (analysis, firstLine) => {
      const part = parts.part(path);
      const text = part.block(analysis, firstLine);
      return parts.add(part.note()) + text;
    },
    closeFile: () => [...parts.closing()].join(''),
  };
}
