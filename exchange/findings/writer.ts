import type { BlockAnalysis } from '../../orders';

/**
 * Turns findings and verdicts into text piece by piece, so that a block can be dropped as soon as it is written. The
 * pieces are asked for in order: `start`, then for each file `openFile`, its blocks, `closeFile`; `unreadable` stands
 * for a whole file; `end` comes last.
 */
export interface FindingsWriter {
  /** What stands before every file. */
  readonly start: () => string;
  /** What stands before the blocks of a file. */
  readonly openFile: (path: string) => string;
  /**
   * What a block comes to.
   * @param firstLine number of the block’s first line in its file, counted from 0
   */
  readonly block: (analysis: BlockAnalysis, firstLine: number) => string;
  /** What stands behind the blocks of a file. */
  readonly closeFile: () => string;
  /** What stands for a file that could not be read. */
  readonly unreadable: (path: string, error: string) => string;
  /** What stands behind every file. */
  readonly end: () => string;
}
