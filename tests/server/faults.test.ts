/**
 * Kinds of faults that language servers are known for, each tried through a real connection. The public reports behind
 * them are named by project and number. Those that other tests hold are listed, and the list is checked.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  CancellationTokenSource,
  CodeActionRequest,
  CompletionRequest,
  DidChangeConfigurationNotification,
  DidDeleteFilesNotification,
  DocumentFormattingRequest,
  type DocumentSymbol,
  DocumentSymbolRequest,
  HoverRequest,
  LSPErrorCodes,
  type Position,
  type Range,
  type TextEdit,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { covered } from '../features/support/sample';
import { connect, USUAL, type Wire } from '../support/wire';
import { askEverything } from './support/questions';

const URI = 'file:///bench/week-48.lentil';
const at = (line: number, character: number): Position => ({ line, character });
const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const example = (name: string): string => readFileSync(`${examples}/${name}`, 'utf8');

/** Faults that other tests hold: the file, and the beginning of the title of the test. */
test.each([
  ['positions in other units than UTF-16 (ruff#13674)', 'connection', 'places are right with %s'],
  ['a place between CR and LF, a lone CR, other line ends (protocol#80)', 'connection', 'a place between CR and LF'],
  ['a byte order mark breaks the first line (dockerfile-ast#106)', 'connection', 'an editor that keeps the byte order'],
  ['findings stay after a text is closed (typescript-language-server#35)', 'connection', 'findings are sent with'],
  ['the disk overrides an unsaved text (xtext-core#888)', 'connection', 'the text in the editor wins over the disk'],
  ['an old result overwrites a new one (terraform-ls#1365)', 'connection', 'an answer that comes too late'],
  ['several edits taken in the wrong text (go#32348)', 'connection', 'several edits of one change'],
  ['renaming with wrong or missing versions (python-language-server#816)', 'names', 'an instrument gets another name'],
  ['a fix from an old finding (rust-analyzer#5897)', 'connection', 'a fix asked for with a mark of an older text'],
  ['layout on save from an older text (sublimelsp#759)', 'connection', 'a layout asked for right after a change'],
  ['a large file freezes the editor (vscode-yaml#485)', 'large-file', 'while a large file is being opened'],
  ['settings of the first folder for all (cpptools#6032)', 'connection', 'each folder has its own settings'],
  ['unsaved texts crash (elixir-ls#734)', 'connection', 'every feature answers for %s, under just that address'],
  ['settings that are null (prisma#1869)', 'connection', 'settings of %j give the defaults'],
  ['a loop of diagnostics (ryl#408)', 'connection', 'nothing more is sent while nothing happens'],
  ['one failure ends the server (languageserver-node#34)', 'connection', 'a failure in %s is logged'],
  ['an empty file crashes (regal#597)', 'connection', 'a text without any line to read breaks nothing'],
  ['stray output on the wire (unified-language-server#41)', 'process', 'every byte that %s writes'],
  ['the server survives its editor (languageserver-node#68)', 'process', '%s ends within a second'],
])('%s: held in %s by “%s…”', (_, file, title) => {
  expect(readFileSync(fileURLToPath(new URL(`${file}.test.ts`, import.meta.url)), 'utf8')).toContain(title);
});

const layout = async ({ client }: Wire): Promise<TextEdit[]> =>
  (await client.sendRequest(DocumentFormattingRequest.type, {
    textDocument: { uri: URI },
    options: { tabSize: 2, insertSpaces: true },
  })) ?? [];

const applied = (text: string, edits: TextEdit[]): string =>
  TextDocument.applyEdits(TextDocument.create(URI, 'lentil', 1, text), edits);

describe('foreign line ends in edits (rust-analyzer#12293)', () => {
  test.each(['\r\n', '\n'])('%j is kept, and no edit goes past the end', async (end) => {
    const text = `order A${end}R -4.50${end}   L -4.50${end}pd 64`;
    const wire = await connect();
    await wire.open(URI, text);
    const edits = await layout(wire);
    for (const { range } of edits) expect(range.end.line).toBeLessThan(4);
    const laidOut = applied(text, edits);
    expect(laidOut.replaceAll(end, '')).not.toMatch(/[\r\n]/);
    expect(laidOut.split(end)).toHaveLength(4);
  });
});

test('findings of a folder that is deleted go with its bench file (langium#1440)', async () => {
  const files = new Map([['file:///bench/days/bench.lentil', 'instrument FOC-A\n  reads-to 0.125\n']]);
  const wire = await connect({ folders: ['file:///bench'], files });
  const uri = 'file:///bench/days/monday.lentil';
  await wire.open(uri, 'order A\n  R -1.00\n  L -1.00\n  reading 2026-11-24 with FOC-A\n    R -1.00\n');
  expect(await wire.codes(uri)).not.toContain('instrument-unknown');
  files.clear();
  await wire.client.sendNotification(DidDeleteFilesNotification.type, { files: [{ uri: 'file:///bench/days' }] });
  await expect.poll(() => wire.codes(uri)).toContain('instrument-unknown');
});

test('fixing all at once with edits that overlap (oxc PR 19793)', async () => {
  const text = 'order A\n  R −4,50 −0,75 x 22 # both signs and both commas\n  L −4,50\n';
  const wire = await connect();
  await wire.open(URI, text);
  const actions = await wire.client.sendRequest(CodeActionRequest.type, {
    textDocument: { uri: URI },
    range: { start: at(0, 0), end: at(3, 0) },
    context: { diagnostics: [], only: ['source.fixAll'] },
  });
  const [action] = (actions ?? []).filter((one) => 'edit' in one);
  const [change] = action && 'edit' in action ? (action.edit?.documentChanges ?? []) : [];
  const edits = change && 'edits' in change ? (change.edits as TextEdit[]) : [];
  // The library refuses edits that overlap.
  const mended = applied(text, edits);
  expect(edits.length).toBeGreaterThan(0);
  expect(mended).toContain('-4');
  await wire.change(URI, { text: mended });
  expect(await wire.codes(URI)).not.toContain('typographic-sign');
});

test('cancelled completions leave the next one right (langium#1567)', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\n  ');
  const params = { textDocument: { uri: URI }, position: at(1, 2) };
  const outcomes = Array.from({ length: 50 }, (_, index) => {
    const source = new CancellationTokenSource();
    const answer = wire.client.sendRequest(CompletionRequest.type, params, source.token);
    if (index % 2 === 0) source.cancel();
    return answer.then(
      (found) => (found ? 'answered' : 'empty'),
      ({ code }) => code,
    );
  });
  const expected = outcomes.map((_, index) => (index % 2 === 0 ? LSPErrorCodes.RequestCancelled : 'answered'));
  expect(await Promise.all(outcomes)).toEqual(expected);
  expect(await wire.client.sendRequest(CompletionRequest.type, params)).not.toBeNull();
});

describe('a storm of refreshed hints (coc-rust-analyzer#638)', () => {
  const change = (wire: Wire) =>
    wire.client.sendNotification(DidChangeConfigurationNotification.type, { settings: null });

  test('many changes of settings ask for hints once', async () => {
    let standard = '';
    const wire = await connect({ configuration: () => ({ standard }) });
    await wire.open(URI, 'order A\n  R -1.00\n  L -1.00\n');
    await wire.findings(URI);
    await wait(250);
    const before = wire.refreshes;
    for (const name of ['z80.1-2015', 'z80.1-2010', 'iso-21987-2017']) {
      standard = name;
      await change(wire);
    }
    await wait(400);
    expect(wire.refreshes).toBe(before + 1);
  });

  test('an editor that cannot refresh is never asked to', async () => {
    const { inlayHint: _, ...workspace } = USUAL.workspace ?? {};
    const wire = await connect({ capabilities: { ...USUAL, workspace } });
    await wire.open(URI, 'order A\n');
    await change(wire);
    await wait(250);
    expect(wire.refreshes).toBe(0);
  });
});

test('differences of semantic tokens against the wrong text (langium#552): none are offered, answers are whole', async () => {
  const { semanticTokensProvider } = (await connect()).server.capabilities;
  expect(semanticTokensProvider && 'full' in semanticTokensProvider && semanticTokensProvider.full).toBe(true);
});

test('one file under two spellings of its address (protocol PR 1786)', async () => {
  const files = new Map([['file:///C:/M%C3%BCller/bench.lentil', 'instrument FOC-A\n']]);
  const wire = await connect({ folders: ['file:///C:/M%C3%BCller'], files });
  const bench = 'file:///c%3A/M%C3%BCller/bench.lentil';
  await wire.open(bench, 'instrument FOC-B\n');
  expect((await wire.findings(bench)).uri).toBe(bench);
  const found = await wire.client.sendRequest(WorkspaceSymbolRequest.type, { query: 'FOC' });
  expect(found?.map(({ name }) => name)).toEqual(['FOC-B']);
});

test('an older version of a file shown beside it (lua-language-server#2267): it has no names of its own', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A-1\n');
  await wire.open('git:/bench/week-48.lentil?HEAD', 'order A-1\norder A-2\n');
  const found = await wire.client.sendRequest(WorkspaceSymbolRequest.type, { query: 'A-' });
  expect(found?.map(({ name }) => name)).toEqual(['A-1']);
});

test('an outline with a blank name or a name outside its range (protocol#641)', async () => {
  const wire = await connect();
  const text = 'order\norder ""\n  reading\n\tinstrument   \ntolerance # no name\nordr QL-1\n  reading  with\n';
  await wire.open(URI, text);
  const found = await wire.client.sendRequest(DocumentSymbolRequest.type, { textDocument: { uri: URI } });
  const check = (symbols: readonly DocumentSymbol[], outer: Range | null): void => {
    for (const { name, range, selectionRange, children } of symbols) {
      expect(name.trim()).not.toBe('');
      expect(isInside(selectionRange, range)).toBe(true);
      if (outer) expect(isInside(range, outer)).toBe(true);
      check(children ?? [], range);
    }
  };
  check(found as DocumentSymbol[], null);
  expect(found?.length).toBeGreaterThan(4);
});

const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character <= b.character);
const isInside = (one: Range, other: Range): boolean =>
  isBefore(other.start, one.start) && isBefore(one.end, other.end);

test('places of what is not there (chevrotain#613): a text cut anywhere has all its places inside', async () => {
  const whole = example('bench.lentil').slice(0, 400);
  const text = `${whole}\norder A\n  R -4.50 -0.75 x 022 prism 2 BI\n  reading 2026-11-24 with FOC-A`;
  const wire = await connect();
  await wire.open(URI, '');
  for (let end = 1; end <= text.length; end += 3) {
    const cut = text.slice(0, end);
    await wire.change(URI, { text: cut });
    const lines = cut.split('\n');
    const inside = (range: Range): void => {
      expect(range.end.line).toBeLessThan(lines.length);
      expect(range.end.character).toBeLessThanOrEqual((lines[range.end.line] as string).length);
      expect(isBefore(range.start, range.end)).toBe(true);
    };
    for (const { range } of (await wire.findings(URI)).diagnostics) inside(range);
  }
  const answers = await askEverything(wire.client, { uri: URI, position: at(1_000, 1_000) });
  expect(wire.logged).toEqual([]);
  expect(answers.hover === null || typeof answers.hover === 'object').toBe(true);
});

test.each(readdirSync(examples).filter((name) => name.endsWith('.lentil')))(
  'a layout that does not stay or loses comments (dts-lsp#142): %s',
  async (name) => {
    const text = example(name).replaceAll(/^ +/gm, ' ');
    const wire = await connect();
    await wire.open(URI, text);
    const once = applied(text, await layout(wire));
    await wire.change(URI, { text: once });
    expect(applied(once, await layout(wire))).toBe(once);
    expect(once.replaceAll(/\s/g, '')).toBe(text.replaceAll(/\s/g, ''));
  },
);

test('one file without a folder has everything above it looked through (marksman#373): nothing is', async () => {
  const listed: string[] = [];
  const files = new Map([[URI, 'order A-1\n']]);
  files.keys = () => {
    listed.push('asked');
    return new Map<string, string>().keys();
  };
  const wire = await connect({ files });
  await wire.open(URI, 'order A-1\n');
  await wire.client.sendRequest(WorkspaceSymbolRequest.type, { query: '' });
  expect(listed).toEqual([]);
});

test.each([
  ['R -4.50-0.75x22', null, null],
  ['R −4.50', 'typographic-sign', '−4.50'],
  ['R -4,50', 'decimal-comma', '-4,50'],
  ['R 4.50', 'sign-missing', '4.50'],
  ['R - 4.50', 'sign-apart', null],
])('a sign that is misread (openhab-webui PR 3055): %s', async (line, code, words) => {
  const text = `order A\n  ${line}\n  L -4.50\n`;
  const wire = await connect();
  await wire.open(URI, text);
  const { diagnostics } = await wire.findings(URI);
  const signs = ['typographic-sign', 'decimal-comma', 'sign-missing', 'sign-apart'];
  const told = diagnostics.filter((one) => signs.includes(String(one.code)));
  expect(told.map((one) => one.code)).toEqual(code ? [code] : []);
  if (words && told[0]) expect(covered(text, told[0].range)).toBe(words);
  const textDocument = { uri: URI };
  expect(await wire.client.sendRequest(HoverRequest.type, { textDocument, position: at(1, 5) })).not.toBeUndefined();
});
