/** Findings and verdicts as one JSON document: whole for a program, in pieces for a stream. */
import type { Analysis, BlockAnalysis } from '../../orders';
import { findingsInJson } from './finding-json';
import { type JsonOptions, orderInJson } from './order-json';
import type { FileJson, OrderJson } from './shape';
import { type Counted, count, counted, noTotals } from './totals';
import { type FindingsWriter, writerOf } from './writer';

/** Everything that `check` tells about one text, as an object. */
export function toJson({ document, blocks }: Analysis, path: string, options?: JsonOptions): FileJson {
  const firstLine = (at: number): number => document.starts[at] as number;
  return {
    path,
    orders: blocks.flatMap((block, at) => {
      const order = orderOf(block, firstLine(at), options);
      return order === null ? [] : [JSON.parse(order) as OrderJson];
    }),
    findings: blocks.flatMap((block, at) => findingsInJson(block, firstLine(at))),
  };
}

/** The order of a block as the text of an `OrderJson`, or null where it is none. */
export const orderOf = (
  { order, evaluation }: BlockAnalysis,
  firstLine: number,
  options?: JsonOptions,
): string | null => order && evaluation && orderInJson(order, evaluation, firstLine, options);

interface JsonPiece {
  readonly order: string | null;
  readonly findings: readonly string[];
  readonly counted: Counted;
}

/**
 * Writes the document with one order and one finding a line. The orders of a file go out at once and its findings after
 * them, since findings are few and a long file would not fit into memory otherwise.
 */
export function jsonWriter(options?: JsonOptions): FindingsWriter<JsonPiece> {
  const totals = noTotals();
  let findings: string[] = [];
  let orders = 0;
  const open = (path: string, more: string): string =>
    `${totals.files++ === 0 ? '\n' : ',\n'}{ "path": ${JSON.stringify(path)},${more} "orders": [`;
  const close = (): string => {
    const list = findings.length > 0 ? `\n${findings.join(',\n')}` : '';
    return `], "findings": [${list}] }`;
  };
  return writerOf({
    start: () => '{ "lentil": 1, "files": [',
    openFile: (path) => {
      findings = [];
      orders = 0;
      return open(path, '');
    },
    piece: (analysis, _, firstLine) => ({
      order: orderOf(analysis, firstLine, options),
      findings: findingsInJson(analysis, firstLine).map((finding) => JSON.stringify(finding)),
      counted: counted(analysis),
    }),
    add: (piece) => {
      count(totals, piece.counted);
      findings.push(...piece.findings);
      return piece.order === null ? '' : `${orders++ === 0 ? '\n' : ',\n'}${piece.order}`;
    },
    closeFile: close,
    unreadable: (path, error) => {
      findings = [];
      return open(path, ` "error": ${JSON.stringify(error)},`) + close();
    },
    end: () => `\n], "totals": ${JSON.stringify(totals)} }\n`,
  });
}
