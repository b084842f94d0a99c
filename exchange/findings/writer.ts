import type { BlockAnalysis } from '../../orders';

/**
 * Turns findings and verdicts into text piece by piece, so that a block can be dropped as soon as it is written. The
 * pieces are asked for in order: `start`, then for each file `openFile`, its blocks, `closeFile`; `unreadable` stands
 * for a whole file; `end` comes last.
 */
export interface FindingsWriter<P = unknown> {
  /** What stands before every file. */
  start(): string;
  /** What stands before the blocks of a file. */
  openFile(path: string): string;
  /**
   * What is to be told of a block, as plain data: it rests on nothing told before, so that any thread can make it.
   * @param firstLine number of the block’s first line in its file
   */
  piece(analysis: BlockAnalysis, path: string, firstLine: number): P;
  /** Writes the piece of the next block of the open file. */
  add(piece: P): string;
  /** Both at once. */
  block(analysis: BlockAnalysis, firstLine: number): string;
  /** What stands behind the blocks of a file. */
  closeFile(): string;
  /** What stands for a file that could not be read. */
  unreadable(path: string, error: string): string;
  /** What stands behind every file. */
  end(): string;
}

/** A writer from its parts. */
export function writerOf<P>(parts: Omit<FindingsWriter<P>, 'block'>): FindingsWriter<P> {
  let path = '';
  return {
    ...parts,
    openFile: (opened) => {
      path = opened;
      return parts.openFile(opened);
    },
    block: (analysis, firstLine) => parts.add(parts.piece(analysis, path, firstLine)),
  };
}
