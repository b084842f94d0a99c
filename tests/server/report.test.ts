/** The report on the workspace as an editor asks for it, against the report that is folded from the same texts directly. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import {
  CancellationTokenSource,
  HoverRequest,
  LSPErrorCodes,
  WorkDoneProgress,
  type WorkDoneProgressBegin,
  type WorkDoneProgressReport,
} from 'vscode-languageserver/node';
import { reportInHtml } from '../../exchange';
import type { ReportAnswer } from '../../server/workspace-report';
import { reportOf } from '../exchange/report/support';
import { connect, type Wire } from '../support/wire';
import { BENCH, yearOfWork } from '../support/year-of-work';

const FOLDER = 'file:///bench';
const RIGHT =
  'standard z80.1-2015\norder A\n  R -2.00\n  make R\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';
const WRONG = RIGHT.replace('    R -2.00', '    R -2.50').replace('order A', 'order B');
/** Takes a good while, and gives an answer all the same. */
const MANY = `standard z80.1-2015\n${RIGHT.replace('standard z80.1-2015\n', '').repeat(4_000)}`;

const onDisk = (texts: Readonly<Record<string, string>>, folder = FOLDER): Map<string, string> =>
  new Map(Object.entries(texts).map(([path, text]) => [`${folder}/${path}`, text]));

const ask = ({ client }: Wire, params: object = {}): Promise<ReportAnswer> =>
  client.sendRequest('lentil/report', params);

const leadingTo = ({ body }: ReportAnswer): readonly string[] =>
  [...body.matchAll(/<a class="order" href="([^"]*)"><code>([^<]*)/g)].map(
    ([, address, shown]) => `${shown} ${address}`,
  );

test('is the one that the same texts give by themselves, the bench file with them', async () => {
  const { files } = yearOfWork(4);
  const wire = await connect({ folders: [FOLDER], files: onDisk(files) });
  const { page, title } = await ask(wire);
  const sorted = Object.fromEntries(Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1)));
  const report = reportOf(sorted, { bench: BENCH });
  expect(report.scope.orders).toBeGreaterThan(200);
  expect(page).toBe(reportInHtml(report));
  expect(title).toBe(`Quality report, ${report.scope.from} to ${report.scope.to}`);
});

test('rows of orders lead to their files and lines', async () => {
  const files = onDisk({ 'week 48/b.lentil': `# Two lines above.\n\n${WRONG}` });
  const wire = await connect({ folders: [FOLDER], files });
  const links = leadingTo(await ask(wire));
  expect(new Set(links)).toEqual(new Set([`week 48/b.lentil:4 ${FOLDER}/week 48/b.lentil#L4`]));
});

test('the text in the editor wins over the one on disk', async () => {
  const wire = await connect({ folders: [FOLDER], files: onDisk({ 'a.lentil': RIGHT }) });
  expect((await ask(wire)).body).toContain('1 of 1 order, accepted when first read');
  await wire.open(`${FOLDER}/a.lentil`, WRONG);
  expect((await ask(wire)).body).toContain('0 of 1 order, accepted when first read');
  await wire.open('untitled:Untitled-1', WRONG);
  expect(leadingTo(await ask(wire))).toContain('untitled:Untitled-1:2 untitled:Untitled-1#L2');
});

test('waits for every file of a slow disk', async () => {
  const names = ['a', 'b', 'c', 'd'].map((name) => `${name}.lentil`);
  const files = onDisk(Object.fromEntries(names.map((name) => [name, RIGHT])));
  const read = async (uri: string): Promise<string | null> => {
    await wait(400);
    return files.get(uri) ?? null;
  };
  const wire = await connect({ folders: [FOLDER], files, read });
  expect((await ask(wire)).body).toContain('4 of 4 orders, accepted when first read');
});

test('with several folders a path begins with the name of its folder', async () => {
  const folders = ['file:///lab/north', 'file:///lab/south'];
  const files = new Map(folders.flatMap((folder) => [...onDisk({ 'a.lentil': WRONG }, folder)]));
  const wire = await connect({ folders, files });
  const links = new Set(leadingTo(await ask(wire)));
  expect([...links]).toEqual(folders.map((folder) => `${folder.slice(12)}/a.lentil:2 ${folder}/a.lentil#L2`));
});

test('a file that cannot be read any more is named, and the rest is reported', async () => {
  const files = onDisk({ 'a.lentil': RIGHT, 'gone.lentil': WRONG });
  const wire = await connect({ folders: [FOLDER], files });
  await ask(wire);
  // The editor does not tell of it.
  files.delete(`${FOLDER}/gone.lentil`);
  const { body } = await ask(wire);
  expect(body).toContain('1 could not be read');
  expect(body).toMatch(/<code>gone\.lentil<\/code><\/th><td>cannot be read/);
  expect(body).toContain('1 of 1 order, accepted when first read');
});

test('nothing at all gives a report of nothing', async () => {
  const { body, title } = await ask(await connect());
  expect(title).toBe('Quality report');
  expect(body).toContain('0 orders with 0 readings in 0 files');
});

test('other questions are answered while it is made, and how far it is is told', async () => {
  const files = onDisk({ 'a.lentil': MANY, 'b.lentil': MANY.replaceAll('-2.00', '-3.00') });
  const wire = await connect({ folders: [FOLDER], files });
  await wire.open(`${FOLDER}/open.lentil`, RIGHT);
  const heard: (WorkDoneProgressBegin | WorkDoneProgressReport)[] = [];
  const kinds: string[] = [];
  const begun = new Promise<void>((resolve) => {
    wire.client.onProgress(WorkDoneProgress.type, 'mine', (value) => {
      kinds.push(value.kind);
      if (value.kind !== 'end') heard.push(value);
      if (value.kind === 'report') resolve();
    });
  });
  let isMade = false;
  const report = ask(wire, { workDoneToken: 'mine' }).then((answer) => {
    isMade = true;
    return answer;
  });
  await begun;
  const hover = await wire.client.sendRequest(HoverRequest.type, {
    textDocument: { uri: `${FOLDER}/open.lentil` },
    position: { line: 2, character: 5 },
  });
  expect(hover).not.toBeNull();
  expect(isMade).toBe(false);
  expect((await report).body).toContain('8\u202f001 orders');
  expect([kinds[0], kinds.at(-1)]).toEqual(['begin', 'end']);
  const shares = heard.map(({ percentage }) => percentage ?? -1);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(Math.max(...shares)).toBeLessThanOrEqual(100);
  expect(heard.at(-1)?.message).toMatch(/^[ab]\.lentil$/);
});

test('is given up at once when nobody wants it any more', async () => {
  const wire = await connect({ folders: [FOLDER], files: onDisk({ 'a.lentil': MANY, 'b.lentil': MANY }) });
  const source = new CancellationTokenSource();
  const begun = new Promise<void>((resolve) => {
    wire.client.onProgress(WorkDoneProgress.type, 'mine', ({ kind }) => {
      if (kind === 'report') resolve();
    });
  });
  const report = wire.client.sendRequest('lentil/report', { workDoneToken: 'mine' }, source.token);
  await begun;
  source.cancel();
  await expect(report).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
});
