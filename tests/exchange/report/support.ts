import { type ReportJson, type ReportOptions, type ReportSummary, reportSummary } from '../../../exchange';
import { analyse, parseDocument } from '../../../orders';

export interface ReportOfOptions extends ReportOptions {
  /** Text of a bench file above all files. */
  readonly bench?: string;
  readonly standard?: string;
}

/** The summary of texts by path, as the command would fold them. */
export function summaryOf(
  files: Readonly<Record<string, string>>,
  { bench, standard }: ReportOfOptions = {},
): ReportSummary {
  const summary = reportSummary();
  const shared = bench === undefined ? [] : [parseDocument(bench)];
  for (const [path, text] of Object.entries(files)) {
    const { document, context, blocks } = analyse(text, { shared, standard: standard ?? null });
    summary.openFile(path, context);
    for (const [at, block] of blocks.entries()) summary.block(block, document.starts[at] as number);
  }
  return summary;
}

export const reportOf = (files: Readonly<Record<string, string>>, options: ReportOfOptions = {}): ReportJson =>
  summaryOf(files, options).result({ date: options.date ?? null });
