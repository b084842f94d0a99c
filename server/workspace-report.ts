/** The quality report on all orders of the workspace, made anew each time somebody asks, in slices that let others through. */
import type { CancellationToken } from 'vscode-languageserver';
import { analyseBlock } from '../orders';
import { keyOf } from './addresses';
import type { Session } from './session';
import { Slices } from './slices';
import type { WorkspaceFile, WorkspaceFiles } from './workspace-files';

/** A request of our own; a `workDoneToken` in it is told how far the work is. */
export const REPORT = 'lentil/report';

export interface ReportAnswer {
  readonly title: string;
  /** For a view with a head of its own; what leads to an order has the class `order` and an address such as `file:///a.lentil#L12`. */
  readonly body: string;
  /** What the body needs to look as it should. */
  readonly style: string;
  /** The same as a page by itself, to be kept and mailed; without what leads to orders. */
  readonly page: string;
}

/** Is told the share that is done, in percent, and the file that is being read. */
export type Tell = (percentage: number, path: string) => void;

/** How often that is told, milliseconds. */
const TELL_EVERY = 200;

/** The report that `lentil report` would make of the same texts; null when nobody wants it any more. */
export async function workspaceReport(
  session: Session,
  workspace: WorkspaceFiles,
  token: CancellationToken,
  tell: Tell,
): Promise<ReportAnswer | null> {
  // A report on some of the orders would pass for one on all of them.
  while (!session.isEveryFileRead && !token.isCancellationRequested) await session.namesRead();
  // Few sessions ask for a report, and none should wait for it to be loaded.
  const { reportSummary } = await import('../exchange/report/summary');
  const { reportInHtml, reportParts } = await import('../exchange/report/html/page');
  const summary = reportSummary();
  const files = await workspace.list();
  const byPath = pathsOf(files, session);
  const slices = new Slices();
  let told = performance.now();
  let done = 0;
  for (const [path, { snapshot }] of byPath) {
    const read = await snapshot();
    if (read) summary.openFile(path, read.context);
    else summary.unreadable(path, 'cannot be read');
    const { blocks = [], starts = [] } = read?.document ?? {};
    for (const [at, block] of blocks.entries()) {
      // What is worked out here is let go at once; a year of work would not fit into memory.
      if (read) summary.block(read.known(at) ?? analyseBlock(block, read.context), starts[at] as number);
      if (!slices.isOver) continue;
      await slices.next();
      if (token.isCancellationRequested) return null;
      if (performance.now() < told + TELL_EVERY) continue;
      told = performance.now();
      tell(Math.floor((100 * (done + at / blocks.length)) / files.length), path);
    }
    done++;
  }
  const report = summary.result();
  const parts = reportParts(report, ({ path, line }) => `${byPath.get(path)?.uri}#L${line}`);
  return { ...parts, page: reportInHtml(report) };
}

/** Files by the path that people know them by, which begins at the workspace folder, or with its name where there are several. */
function pathsOf(files: readonly WorkspaceFile[], session: Session): ReadonlyMap<string, WorkspaceFile> {
  const folders = files.map(({ uri }) => session.folderOf(uri));
  const isOneFolder = new Set(folders.filter(Boolean)).size <= 1;
  const paths = new Map<string, WorkspaceFile>();
  for (const [at, file] of files.entries()) {
    const folder = keyOf(folders[at] ?? '');
    const start = isOneFolder ? folder.length : folder.lastIndexOf('/', folder.length - 1);
    const path = folder === '' ? file.key : file.key.slice(start + 1);
    // Two folders may have the same name.
    paths.set(paths.has(path) ? file.uri : path, file);
  }
  return paths;
}
