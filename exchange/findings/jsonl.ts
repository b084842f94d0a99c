/** Findings and verdicts as JSON lines: one order a line, with its findings. */
import type { BlockAnalysis } from '../../orders';
import { findingsInJson } from './finding-json';
import { orderOf } from './json';
import type { JsonOptions } from './order-json';
import type { LineJson } from './shape';
import { type FindingsWriter, writerOf } from './writer';

/** One line for an order, and one for a block that is none but has findings; nothing for any other block. */
export function toLine(
  analysis: BlockAnalysis,
  path: string,
  firstLine: number,
  options?: JsonOptions,
): LineJson | null {
  const order = orderOf(analysis, firstLine, options);
  const findings = findingsInJson(analysis, firstLine);
  return order || findings.length > 0 ? { lentil: 1, path, order, findings } : null;
}

/** Writes one line for each order, and for each block that is none but has findings. */
export function jsonLinesWriter(options?: JsonOptions): FindingsWriter<string> {
  const written = (line: LineJson | null): string => (line ? `${JSON.stringify(line)}\n` : '');
  return writerOf({
    start: () => '',
    openFile: () => '',
    add: (line) => line,
    piece: (analysis, path, firstLine) => written(toLine(analysis, path, firstLine, options)),
    closeFile: () => '',
    unreadable: (unread, error) => written({ lentil: 1, path: unread, error, order: null, findings: [] }),
    end: () => '',
  });
}
