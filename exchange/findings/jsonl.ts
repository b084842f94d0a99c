/** Findings and verdicts as JSON lines: one order a line, with its findings. */
import type { BlockAnalysis } from '../../orders';
import { findingsInJson } from './finding-json';
import { orderOf } from './json';
import type { JsonOptions } from './order-json';
import { json } from './plain';
import type { LineJson } from './shape';
import { type FindingsWriter, writerOf } from './writer';

/** One line for an order, and one for a block that is none but has findings; nothing for any other block. */
export function toLine(
  analysis: BlockAnalysis,
  path: string,
  firstLine: number,
  options?: JsonOptions,
): LineJson | null {
  const line = lineOf(analysis, path, firstLine, options);
  return line === '' ? null : JSON.parse(line);
}

function lineOf(analysis: BlockAnalysis, path: string, firstLine: number, options?: JsonOptions): string {
  const order = orderOf(analysis, firstLine, options);
  const findings = findingsInJson(analysis, firstLine);
  if (order === null && findings.length === 0) return '';
  return `{"lentil":1,"path":${json(path)},"order":${order},"findings":${json(findings)}}\n`;
}

/** Writes one line for each order, and for each block that is none but has findings. */
export function jsonLinesWriter(options?: JsonOptions): FindingsWriter<null> {
  return writerOf({
    start: () => '',
    openFile: () => '',
    part: (path) => ({
      block: (analysis, firstLine) => lineOf(analysis, path, firstLine, options),
      note: () => null,
    }),
    add: () => '',
    closing: () => [],
    unreadable: (unread, error) => `${json({ lentil: 1, path: unread, error, order: null, findings: [] })}\n`,
    end: () => '',
  });
}
