import type { BlockAnalysis } from '../../orders';

/**
 * Turns findings and verdicts into text piece by piece, so that a block can be dropped as soon as it is written. The
 * pieces are asked for in order: `start`, then for each file `openFile`, its blocks, `closeFile`; `unreadable` stands
 * for a whole file; `end` comes last.
 */
export interface FindingsWriter {
  readonly start: () => string;
  readonly openFile: (path: string) => string;
  /** @param firstLine number of the block’s first line in its file */
  readonly block: (analysis: BlockAnalysis, firstLine: number) => string;
  readonly closeFile: () => string;
  readonly unreadable: (path: string, error: string) => string;
  readonly end: () => string;
}
