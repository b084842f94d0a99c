/** Findings and verdicts as one JSON document: whole for a program, in pieces for a stream. */
import type { Analysis, BlockAnalysis } from '../../orders';
import { findingsInJson } from './finding-json';
import { type JsonOptions, orderInJson } from './order-json';
import { json } from './plain';
import type { FileJson, OrderJson } from './shape';
import { addTotals, count, noTotals, type Totals } from './totals';
import { type FindingsWriter, type PartWriter, writerOf } from './writer';

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

interface JsonNote {
  readonly orders: number;
  /** One finding a line, a comma between two. */
  readonly findings: string;
  readonly totals: Totals;
}

/**
 * Writes the document with one order and one finding a line. The orders of a file go out at once and its findings after
 * them, as text, since findings are few and a long file would not fit into memory otherwise.
 */
export function jsonWriter(options?: JsonOptions): FindingsWriter<JsonNote> {
  const totals = noTotals();
  let findings: string[] = [];
  let orders = 0;
  const open = (path: string, more: string): string =>
    `${totals.files++ === 0 ? '\n' : ',\n'}{ "path": ${json(path)},${more} "orders": [`;
  return writerOf({
    start: () => '{ "lentil": 1, "files": [',
    openFile: (path) => {
      findings = [];
      orders = 0;
      return open(path, '');
    },
    part: () => partWriter(options),
    add: (note) => {
      addTotals(totals, note.totals);
      if (note.findings !== '') findings.push(note.findings);
      if (note.orders === 0) return '';
      const isFirst = orders === 0;
      orders += note.orders;
      return isFirst ? '\n' : ',\n';
    },
    closing: function* () {
      yield '], "findings": [';
      for (const [at, some] of findings.entries()) yield `${at === 0 ? '\n' : ',\n'}${some}`;
      yield '] }';
    },
    unreadable: (path, error) => `${open(path, ` "error": ${json(error)},`)}], "findings": [] }`,
    end: () => `\n], "totals": ${json(totals)} }\n`,
  });
}

function partWriter(options?: JsonOptions): PartWriter<JsonNote> {
  const totals = noTotals();
  const findings: string[] = [];
  let orders = 0;
  return {
    block: (analysis, firstLine) => {
      count(totals, analysis);
      for (const finding of findingsInJson(analysis, firstLine)) findings.push(json(finding));
      const order = orderOf(analysis, firstLine, options);
      if (order === null) return '';
      return orders++ === 0 ? order : `,\n${order}`;
    },
    note: () => ({ orders, findings: findings.join(',\n'), totals }),
  };
}
