/** Whole conversations between an editor and the server, over streams in memory. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import {
  CodeActionKind,
  CodeActionRequest,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DocumentFormattingRequest,
  DocumentSymbolRequest,
  FileChangeType,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  LSPErrorCodes,
  type Position,
  type Range,
  ShutdownRequest,
} from 'vscode-languageserver/node';
import { FEATURES } from '../../server/features';
import { connect, USUAL, type Wire } from '../support/wire';
import { askEverything } from './support/questions';

const URI = 'file:///bench/week-48.lentil';
const at = (line: number, character: number): Position => ({ line, character });
const range = (line: number, start: number, end: number): Range => ({ start: at(line, start), end: at(line, end) });
const WHOLE: Range = { start: at(0, 0), end: at(1_000, 0) };

const LAYOUT = { tabSize: 2, insertSpaces: true };

const UNSIGNED = 'order A\n  R 4.50\n  L -4.50\n';
const SIGNED = 'order A\n  R -4.50\n  L -4.50\n';

test('findings are sent with the version of the text, and taken back when it is closed', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED, 3);
  expect((await wire.findings(URI)).version).toBe(3);
  expect(await wire.codes(URI)).toContain('sign-missing');
  await wire.change(URI, { range: range(1, 4, 4), text: '-' });
  expect(await wire.findings(URI)).toMatchObject({ version: 4 });
  expect(await wire.codes(URI)).not.toContain('sign-missing');
  await wire.close(URI);
  await wire.nextPublication();
  expect(wire.published.at(-1)).toEqual({ uri: URI, diagnostics: [] });
});

test('nothing more is sent while nothing happens', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  await wire.findings(URI);
  await wait(250);
  const sent = [wire.published.length, wire.refreshes];
  await wait(400);
  expect([wire.published.length, wire.refreshes]).toEqual(sent);
  expect(sent).toEqual([1, 1]);
});

test('several edits of one change are each taken in the text the one before has left', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\n  R -4.50\n');
  await wire.change(
    URI,
    { range: range(1, 2, 3), text: 'OD' },
    { range: { start: at(2, 0), end: at(2, 0) }, text: '  OS 4.25\n' },
    { range: { start: at(0, 7), end: at(0, 7) }, text: '\n' },
    { range: range(3, 5, 5), text: '-' },
  );
  expect(await wire.codes(URI)).not.toContain('sign-missing');
  const hover = await wire.client.sendRequest(HoverRequest.type, { textDocument: { uri: URI }, position: at(3, 3) });
  expect(hover?.range).toEqual(range(3, 2, 4));
});

test('a layout asked for right after a change is that of the new text', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\nR -4.50\n');
  await wire.change(URI, { range: { start: at(1, 0), end: at(1, 7) }, text: 'OD  -4.75' });
  const edits = await wire.client.sendRequest(DocumentFormattingRequest.type, {
    textDocument: { uri: URI },
    options: LAYOUT,
  });
  expect(edits).toEqual([{ range: range(1, 0, 9), newText: '  OD          -4.75' }]);
});

test('a whole new text may be sent instead of edits', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  await wire.change(URI, { text: SIGNED });
  expect(await wire.codes(URI)).not.toContain('sign-missing');
});

test.each([
  ['UTF-16 units', 'order 👓 # 👓\n  note "👓 Zoë"  \n  note 👓👓\n  R 4.50  # 👓\n  L -4.50\n', range(3, 4, 8)],
  ['CRLF', UNSIGNED.replaceAll('\n', '\r\n'), range(1, 4, 8)],
  ['CR', UNSIGNED.replaceAll('\n', '\r'), range(1, 4, 8)],
  ['mixed line ends', 'order A\r  R 4.50\r\n  L -4.50\n', range(1, 4, 8)],
])('places are right with %s, before and after an edit', async (_, text, expected) => {
  const wire = await connect();
  await wire.open(URI, text);
  const found = async () =>
    (await wire.findings(URI)).diagnostics.filter(({ code }) => code === 'sign-missing').map((one) => one.range);
  expect(await found()).toEqual([expected]);
  const start = expected.start.character;
  await wire.change(URI, { range: { start: expected.start, end: expected.start }, text: '  ' });
  expect(await found()).toEqual([range(expected.start.line, start + 2, start + 6)]);
});

test('an editor that keeps the byte order mark counts it, until it takes it away', async () => {
  const wire = await connect();
  const first = async () =>
    (await wire.findings(URI)).diagnostics.find(({ code }) => code === 'standard-unknown')?.range;
  await wire.open(URI, '\uFEFFstandard nowhere-9\n');
  expect(await first()).toEqual(range(0, 10, 19));
  await wire.change(URI, { range: range(0, 10, 10), text: 'x' });
  expect(await first()).toEqual(range(0, 10, 20));
  await wire.change(URI, { range: range(0, 0, 1), text: '' });
  expect(await first()).toEqual(range(0, 9, 19));
  await wire.change(URI, { range: range(0, 0, 0), text: '\uFEFF' });
  expect(await first()).toEqual(range(0, 10, 20));
});

test('a place between CR and LF counts as the end of its line', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\r\n  R 4.50\r\n  L -4.50\r\n');
  await wire.change(URI, { range: { start: at(1, 9), end: at(1, 9) }, text: ' # seen' });
  await wire.change(URI, { range: range(1, 4, 4), text: '-' });
  expect(await wire.codes(URI)).not.toContain('sign-missing');
  const textDocument = { uri: URI };
  expect(await wire.client.sendRequest(HoverRequest.type, { textDocument, position: at(1, 9) })).not.toBeNull();
  expect(await wire.client.sendRequest(FoldingRangeRequest.type, { textDocument })).toEqual([
    { startLine: 0, endLine: 2 },
  ]);
});

test.each(['untitled:Untitled-1', 'file:///c%3A/bench/M%C3%BCller%20%26%20co.lentil', 'file:///C:/bench/week.lentil'])(
  'every feature answers for %s, under just that address',
  async (uri) => {
    const asked: string[] = [];
    const wire = await connect({
      files: { get: (one: string) => void asked.push(one) } as unknown as Map<string, string>,
    });
    await wire.open(uri, `${UNSIGNED}  reading 2026-11-24\n    R -4.50\n`);
    expect((await wire.findings(uri)).uri).toBe(uri);
    const textDocument = { uri };
    const { client } = wire;
    expect(await client.sendRequest(HoverRequest.type, { textDocument, position: at(2, 3) })).not.toBeNull();
    expect(await client.sendRequest(InlayHintRequest.type, { textDocument, range: WHOLE })).not.toEqual([]);
    expect(await client.sendRequest(DocumentSymbolRequest.type, { textDocument })).toHaveLength(1);
    expect(await client.sendRequest(FoldingRangeRequest.type, { textDocument })).toHaveLength(2);
    const context = { diagnostics: [], only: [CodeActionKind.QuickFix] };
    const actions = await client.sendRequest(CodeActionRequest.type, { textDocument, range: range(1, 5, 5), context });
    expect(actions).toHaveLength(2);
    expect(JSON.stringify(actions)).toContain(JSON.stringify(uri));
    if (uri.startsWith('untitled:')) expect(asked).toEqual([]);
  },
);

test('texts of other schemes get nothing', async () => {
  const wire = await connect();
  await wire.open('git:/bench/week-48.lentil?ref', UNSIGNED);
  await wire.open(URI, UNSIGNED);
  await wire.findings(URI);
  const textDocument = { uri: 'git:/bench/week-48.lentil?ref' };
  expect(await wire.client.sendRequest(InlayHintRequest.type, { textDocument, range: WHOLE })).toBeNull();
  expect(wire.published.map(({ uri }) => uri)).toEqual([URI]);
});

test('files of the file system that the workspace lies in are served like any others', async () => {
  const wire = await connect({ folders: ['vscode-vfs://host/bench'] });
  await wire.open('vscode-vfs://host/bench/a.lentil', UNSIGNED);
  await wire.open('git:/bench/a.lentil', UNSIGNED);
  expect(await wire.codes('vscode-vfs://host/bench/a.lentil')).toContain('sign-missing');
  await wait(20);
  expect(wire.published).toHaveLength(1);
});

test.each(['', ' ', '\n', '\r\n\r\n', '   \n\t\n', '# only a word\n', '\uFEFF', '#'])(
  'a text without any line to read breaks nothing: %j',
  async (text) => {
    const wire = await connect();
    await wire.open(URI, text);
    expect(await wire.findings(URI)).toEqual({ uri: URI, version: 1, diagnostics: [] });
    const textDocument = { uri: URI };
    const { client } = wire;
    expect(await client.sendRequest(InlayHintRequest.type, { textDocument, range: WHOLE })).toEqual([]);
    expect(await client.sendRequest(HoverRequest.type, { textDocument, position: at(0, 0) })).toBeNull();
    expect(await client.sendRequest(DocumentSymbolRequest.type, { textDocument })).toEqual([]);
    expect(await client.sendRequest(FoldingRangeRequest.type, { textDocument })).toEqual([]);
    await wire.change(URI, { range: { start: at(0, 0), end: at(99, 0) }, text: UNSIGNED });
    expect(await wire.codes(URI)).toContain('sign-missing');
    expect(wire.logged).toEqual([]);
  },
);

test('cancelled requests are answered as such, and the next one is right', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  const { CancellationTokenSource } = await import('vscode-languageserver/node');
  const params = { textDocument: { uri: URI }, position: at(1, 3) };
  const outcomes = Array.from({ length: 50 }, (_, index) => {
    const source = new CancellationTokenSource();
    const answer = wire.client.sendRequest(HoverRequest.type, params, source.token);
    if (index % 2 === 0) source.cancel();
    return answer.then(
      (hover) => (hover ? 'answered' : 'empty'),
      (error: { readonly code: number }) => error.code,
    );
  });
  const expected = outcomes.map((_, index) => (index % 2 === 0 ? LSPErrorCodes.RequestCancelled : 'answered'));
  expect(await Promise.all(outcomes)).toEqual(expected);
  expect(await wire.client.sendRequest(HoverRequest.type, params)).not.toBeNull();
});

test('a question about a text that changes meanwhile is told to be outdated', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  await wire.findings(URI);
  const textDocument = { uri: URI };
  const first = wire.client.sendRequest(HoverRequest.type, { textDocument, position: at(1, 3) }).then(
    () => 'answered',
    (error: { readonly code: number }) => error.code,
  );
  const changed = wire.change(URI, { text: '' });
  expect([LSPErrorCodes.ContentModified, 'answered']).toContain(await first);
  await changed;
  // A question behind the change is answered from the new text.
  expect(await wire.client.sendRequest(HoverRequest.type, { textDocument, position: at(1, 3) })).toBeNull();
});

test('a fix asked for with a mark of an older text is made for the present one', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  const [mark] = (await wire.findings(URI)).diagnostics.filter(({ code }) => code === 'sign-missing');
  await wire.change(URI, { range: range(0, 0, 0), text: '# from the shop\n' });
  const textDocument = { uri: URI };
  const ask = (where: Range) =>
    wire.client.sendRequest(CodeActionRequest.type, {
      textDocument,
      range: where,
      context: { diagnostics: mark ? [mark] : [], only: [CodeActionKind.QuickFix] },
    });
  expect(await ask(range(1, 2, 3))).toEqual([]);
  expect(await ask(range(2, 5, 5))).toMatchObject([
    { edit: { documentChanges: [{ textDocument: { version: 2 }, edits: [{ range: range(2, 4, 4), newText: '+' }] }] } },
    { edit: { documentChanges: [{ textDocument: { version: 2 }, edits: [{ range: range(2, 4, 4), newText: '-' }] }] } },
  ]);
});

test.each(Object.keys(FEATURES) as (keyof typeof FEATURES)[])(
  'a failure in %s is logged, and the server goes on',
  async (name) => {
    const broken = {
      ...FEATURES,
      [name]: () => {
        throw new Error('forced by a test');
      },
    };
    const wire = await connect({ features: broken });
    await wire.open(URI, UNSIGNED);
    const answers = await askEverything(wire.client, { uri: URI, position: at(0, 6) });
    if (name !== 'diagnostics') expect(answers).toHaveProperty(name, null);
    expect(wire.logged.join()).toContain('forced by a test');
    if (name === 'diagnostics') return;
    await wire.change(URI, { text: SIGNED });
    expect(await wire.codes(URI)).not.toContain('sign-missing');
  },
);

const JUDGED = `order A
  R -1.00
  L -1.00
  design single-vision
  pd 64
  reading 2026-11-24
    R -1.25
    L -1.00
    pd 64
    prism R 0 L 0
`;

test.each([
  null,
  {},
  [],
  7,
  { standard: 5, diagnostics: 'all' },
  { standard: '', diagnostics: { most: -1 } },
  { diagnostics: null },
])('settings of %j give the defaults', async (settings) => {
  const wire = await connect({ configuration: () => settings });
  await wire.open(URI, JUDGED);
  const codes = await wire.codes(URI);
  expect(codes).toContain('standard-missing');
  expect(codes).not.toContain('power-outside');
});

test('a number of findings set by the user is kept', async () => {
  const wire = await connect({ configuration: () => ({ diagnostics: { most: 2 } }) });
  await wire.open(URI, 'order A\n  R 4.50\n  L 4.50\n  L 3.50\n  add x\n  foo 1\n');
  expect((await wire.findings(URI)).diagnostics).toHaveLength(3);
});

test('findings of a code are shown at the level that the user has chosen, or not at all', async () => {
  let levels = {};
  const wire = await connect({ configuration: () => ({ diagnostics: { levels } }) });
  await wire.open(URI, 'order A\n  R −4.55\n');
  const shown = async () =>
    Object.fromEntries((await wire.findings(URI)).diagnostics.map(({ code, severity }) => [code, severity]));
  expect(await shown()).toMatchObject({ 'eye-missing': 1, 'typographic-sign': 4, 'quarter-step': 4 });
  levels = { 'eye-missing': 'info', 'typographic-sign': 'warning', 'quarter-step': 'off' };
  await wire.client.sendNotification(DidChangeConfigurationNotification.type, { settings: null });
  await wire.nextPublication();
  expect(await shown()).toMatchObject({ 'eye-missing': 3, 'typographic-sign': 2 });
  expect(await shown()).not.toHaveProperty('quarter-step');
});

test('a share of the limit from which on a pass is told can be set', async () => {
  const wire = await connect({ configuration: () => ({ standard: 'z80.1-2015', near: { percent: 50 } }) });
  await wire.open(URI, JUDGED.replace('R -1.25', 'R -1.12'));
  expect(await wire.codes(URI)).toContain('nearly-used-up');
});

test('each folder has its own settings, and a file in none has those of the window', async () => {
  const wire = await connect({
    folders: ['file:///bench', 'file:///bench/strict', 'file:///other'],
    configuration: (scope) => ({ standard: scope?.endsWith('strict') ? 'z80.1-2015' : scope ? '' : 'iso-21987-2017' }),
  });
  const [strict, plain, none] = ['file:///bench/strict/a.lentil', 'file:///bench/b.lentil', 'file:///benches/c.lentil'];
  for (const uri of [strict, plain, none]) await wire.open(uri as string, JUDGED);
  expect(JSON.stringify(await wire.findings(strict as string))).toContain('z80.1-2015');
  expect(await wire.codes(plain as string)).toContain('standard-missing');
  expect(JSON.stringify(await wire.findings(none as string))).toContain('iso-21987-2017');
  await wire.client.sendNotification(DidChangeWorkspaceFoldersNotification.type, {
    event: { added: [], removed: [{ uri: 'file:///bench/strict', name: '' }] },
  });
  await wire.nextPublication();
  expect(await wire.codes(strict as string)).toContain('standard-missing');
});

test('a change of settings reaches the open texts, and asks for their hints anew', async () => {
  let standard = '';
  const wire = await connect({ configuration: () => ({ standard }) });
  await wire.open(URI, JUDGED);
  expect(await wire.codes(URI)).toContain('standard-missing');
  standard = 'z80.1-2015';
  const { refreshes } = wire;
  await wire.client.sendNotification(DidChangeConfigurationNotification.type, { settings: null });
  await wire.nextPublication();
  expect(await wire.codes(URI)).toContain('power-outside');
  await wait(250);
  expect(wire.refreshes).toBeGreaterThan(refreshes);
});

test('an editor that only pushes its settings is heard, one that can do nothing is served', async () => {
  const wire = await connect({ capabilities: {} });
  await wire.open(URI, JUDGED);
  expect(await wire.codes(URI)).toContain('standard-missing');
  await wire.client.sendNotification(DidChangeConfigurationNotification.type, {
    settings: { lentil: { standard: 'z80.1-2015' } },
  });
  await wire.nextPublication();
  expect(await wire.codes(URI)).toContain('power-outside');
  expect(wire.registered).toEqual([]);
  expect(wire.refreshes).toBe(0);
});

test('findings come also from an editor that never tells its settings', async () => {
  const wire = await connect({ configuration: () => new Promise(() => undefined) });
  await wire.open(URI, UNSIGNED);
  expect(await wire.codes(URI)).toContain('sign-missing');
});

const BENCH = 'instrument FOC-A\n  reads-to 0.125\n';
const NAMING = 'order A\n  R -1.00\n  L -1.00\n  reading 2026-11-24 with FOC-A\n    R -1.00\n';

const changedOnDisk = (wire: Wire, uri: string, type: FileChangeType): Promise<void> =>
  wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });

test('only files of the notation and their settings are watched', async () => {
  const wire = await connect();
  await wire.open(URI, UNSIGNED);
  await wire.findings(URI);
  const watched = wire.registered.find(({ method }) => method === 'workspace/didChangeWatchedFiles');
  expect(watched?.registerOptions).toEqual({
    watchers: [{ globPattern: '**/*.lentil' }, { globPattern: '**/lentil.config.json' }],
  });
});

test('the nearest bench file in the folder or above it is found, also above the workspace, as by the command', async () => {
  const files = new Map([['file:///bench/bench.lentil', BENCH]]);
  const wire = await connect({ folders: ['file:///bench/days'], files });
  for (const uri of ['file:///bench/days/monday/a.lentil', 'file:///bench/loose/a.lentil']) {
    await wire.open(uri, NAMING);
    expect(await wire.codes(uri)).not.toContain('instrument-unknown');
  }
});

test('a bench file that comes, changes or goes on disk is noticed, also when a folder goes', async () => {
  const bench = 'file:///bench/bench.lentil';
  const files = new Map<string, string>();
  const wire = await connect({ folders: ['file:///bench'], files });
  const uri = 'file:///bench/days/monday.lentil';
  await wire.open(uri, NAMING);
  expect(await wire.codes(uri)).toContain('instrument-unknown');
  files.set(bench, BENCH);
  await changedOnDisk(wire, bench, FileChangeType.Created);
  await wire.nextPublication();
  expect(await wire.codes(uri)).not.toContain('instrument-unknown');
  files.set(bench, BENCH.replace('FOC-A', 'FOC-B'));
  await changedOnDisk(wire, bench, FileChangeType.Changed);
  await wire.nextPublication();
  expect(await wire.codes(uri)).toContain('instrument-unknown');
  files.set(bench, BENCH);
  await changedOnDisk(wire, bench, FileChangeType.Changed);
  await wire.nextPublication();
  files.clear();
  await changedOnDisk(wire, 'file:///bench', FileChangeType.Deleted);
  await wire.nextPublication();
  expect(await wire.codes(uri)).toContain('instrument-unknown');
});

test('the text in the editor wins over the disk, and the disk counts again after it is closed', async () => {
  const bench = 'file:///bench/bench.lentil';
  const uri = 'file:///bench/a.lentil';
  const files = new Map([[bench, BENCH]]);
  const wire = await connect({ folders: ['file:///bench'], files });
  await wire.open(uri, NAMING);
  expect(await wire.codes(uri)).not.toContain('instrument-unknown');
  await wire.open(bench, BENCH);
  await wire.findings(bench);
  await wire.change(bench, { range: range(0, 15, 16), text: 'B' });
  await expect.poll(() => wire.codes(uri)).toContain('instrument-unknown');
  await changedOnDisk(wire, bench, FileChangeType.Changed);
  await wait(50);
  expect(await wire.codes(uri)).toContain('instrument-unknown');
  await wire.close(bench);
  await expect.poll(() => wire.codes(uri)).not.toContain('instrument-unknown');
});

test('with no folder open nothing is read but the bench and settings files above an open file', async () => {
  const asked: string[] = [];
  const files = { get: (uri: string) => void asked.push(uri) } as unknown as Map<string, string>;
  const wire = await connect({ files });
  await wire.open('file:///desk/ko/orders/a.lentil', UNSIGNED);
  await wire.findings('file:///desk/ko/orders/a.lentil');
  const folders = ['/desk/ko/orders', '/desk/ko', '/desk', ''];
  for (const name of ['bench.lentil', 'lentil.config.json'])
    expect(asked.filter((uri) => uri.endsWith(name))).toEqual(folders.map((folder) => `file://${folder}/${name}`));
  expect(asked).toHaveLength(2 * folders.length);
});

test('an answer that comes too late does not undo a newer one', async () => {
  const answers: ((settings: unknown) => void)[] = [];
  const wire = await connect({ configuration: () => new Promise((resolve) => answers.push(resolve)) });
  await wire.open(URI, JUDGED);
  await expect.poll(() => answers.length).toBe(1);
  await wire.client.sendNotification(DidChangeConfigurationNotification.type, { settings: null });
  await expect.poll(() => answers.length).toBe(2);
  answers[1]?.({ standard: 'z80.1-2015' });
  await expect.poll(() => wire.published.length).toBe(1);
  answers[0]?.({ standard: '' });
  await wait(50);
  expect(await wire.codes(URI)).toContain('power-outside');
  expect(wire.published).toHaveLength(1);
});

test('after a shutdown nothing is sent any more', async () => {
  const wire = await connect({ capabilities: USUAL });
  const many = Array.from({ length: 300 }, (_, index) => `order A${index}\n  R 4.50\n  L -4.50\n`).join('');
  await wire.open(URI, many);
  await wire.client.sendRequest(ShutdownRequest.type);
  const { length } = wire.published;
  await wait(100);
  expect(wire.published).toHaveLength(length);
});
