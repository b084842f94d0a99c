/** `lentil report`: the quality of many orders on one page, read order by order and never held together. */
// Not through the face of the room: what only this command needs would be loaded by every other.
import { reportInHtml } from '../exchange/report/html/page';
import type { ReportJson } from '../exchange/report/report-json';
import { type ReportSummary, reportSummary } from '../exchange/report/summary';
import { isDay } from '../orders';
import { Complaints } from './complaints';
import { orderFiles } from './order-files';
import { print } from './output';
import { Progress } from './progress';
import { reasonOf } from './read-text';
import { replaceFile } from './replace-file';
import { givenSettings } from './settings-files';
import { Surroundings } from './surroundings';
import { UnusableArgument } from './unusable-argument';

export type ReportFormat = 'html' | 'json';

export interface ReportCommandOptions {
  /** A file to write; without one the report goes to standard output. */
  readonly out?: string;
  readonly format: ReportFormat;
  readonly standard?: string;
  /** The day that ages are counted to. */
  readonly date?: string;
  /** A file to read settings from, or false for none. */
  readonly config?: string | false;
}

const FORMS: Readonly<Record<ReportFormat, (report: ReportJson) => string>> = {
  html: reportInHtml,
  json: (report) => `${JSON.stringify(report, null, 2)}\n`,
};

/** How often the progress is told, in blocks; looking at the clock costs more than an order is worth. */
const EVERY = 256;

/** Rejected orders are what a report is about, so they do not make it fail; only what could not be used does. */
export async function report(paths: readonly string[], options: ReportCommandOptions): Promise<0 | 2> {
  const { out, format, date } = options;
  if (date !== undefined && !(/^\d{4}-\d\d-\d\d$/.test(date) && isDay(date)))
    throw new UnusableArgument(`--date has to be a day such as 2026-11-30, not ${date}`);
  const summary = reportSummary();
  const progress = new Progress(out !== undefined);
  const complaints = new Complaints(progress);
  await readInto(summary, paths, options, progress, complaints);
  progress.clear();
  const text = FORMS[format](summary.result({ date: date ?? null }));
  if (out === undefined) await print(text);
  else await write(out, text);
  return complaints.any ? 2 : 0;
}

async function readInto(
  summary: ReportSummary,
  paths: readonly string[],
  { standard, config }: ReportCommandOptions,
  progress: Progress,
  complaints: Complaints,
): Promise<void> {
  const surroundings = new Surroundings(givenSettings(standard === undefined ? {} : { standard }, config));
  let blocks = 0;
  let orders = 0;
  for await (const file of orderFiles(paths, surroundings, complaints)) {
    if (file.kind === 'unreadable') {
      summary.unreadable(file.path, file.error);
      continue;
    }
    summary.openFile(file.path, file.context);
    for (const { analysis, firstLine } of file.analyses) {
      if (analysis.order) orders++;
      summary.block(analysis, firstLine);
      if (++blocks % EVERY === 0) progress.tell(orders, file.path);
    }
  }
}

async function write(out: string, text: string): Promise<void> {
  try {
    await replaceFile(out, text);
  } catch (error) {
    throw new UnusableArgument(`${out}: ${reasonOf(error)}`);
  }
  process.stderr.write(`lentil: the report is in ${out}\n`);
}
