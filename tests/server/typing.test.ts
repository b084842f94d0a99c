/** What an editor asks while somebody types, through a whole connection. */
import { expect, test } from 'vitest';
import {
  type ClientCapabilities,
  CodeActionRequest,
  CodeLensRequest,
  type CompletionItem,
  CompletionRequest,
  CompletionResolveRequest,
  CompletionTriggerKind,
  DocumentOnTypeFormattingRequest,
  InsertTextFormat,
  InsertTextMode,
  type Position,
  SelectionRangeRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
} from 'vscode-languageserver/node';
import { connect, USUAL, type Wire } from '../support/wire';

const URI = 'file:///bench/week-48.lentil';
const textDocument = { uri: URI };
const at = (line: number, character: number): Position => ({ line, character });

/** An editor that fills in places, leaves lines as they are, and asks for the words about an item when it shows it. */
const FILLING_IN: ClientCapabilities = {
  ...USUAL,
  workspace: { ...USUAL.workspace, workspaceEdit: { documentChanges: true, snippetEditSupport: true } },
  textDocument: {
    ...USUAL.textDocument,
    completion: {
      completionItem: {
        snippetSupport: true,
        documentationFormat: ['markdown'],
        resolveSupport: { properties: ['documentation'] },
        insertTextModeSupport: { valueSet: [InsertTextMode.asIs, InsertTextMode.adjustIndentation] },
      },
    },
  },
};

async function offered(wire: Wire, position: Position): Promise<readonly CompletionItem[]> {
  const list = await wire.client.sendRequest(CompletionRequest.type, { textDocument, position });
  return Array.isArray(list) ? list : (list?.items ?? []);
}

test('words are offered after every keystroke, and say more when they are looked at', async () => {
  const wire = await connect({ capabilities: FILLING_IN });
  await wire.open(URI, 'order A\n  \n');
  for (const [column, letter] of [...'height'].entries()) {
    await wire.change(URI, { range: { start: at(1, column + 2), end: at(1, column + 2) }, text: letter });
    const item = (await offered(wire, at(1, column + 3))).find(({ label }) => label === 'height');
    expect(item?.textEdit).toMatchObject({ range: { start: at(1, 2), end: at(1, column + 3) }, newText: 'height' });
    expect(item?.documentation).toBeUndefined();
    const shown = await wire.client.sendRequest(CompletionResolveRequest.type, item as CompletionItem);
    expect(shown.documentation).toMatchObject({ kind: 'markdown', value: expect.stringContaining('lower tangent') });
  }
  expect(wire.logged).toEqual([]);
});

test('whole blocks have places to fill in where the editor has them, and none where it has not', async () => {
  const [filling, plain] = [await connect({ capabilities: FILLING_IN }), await connect()];
  const [one, other] = await Promise.all(
    [filling, plain].map(async (wire) => {
      await wire.open(URI, '');
      return (await offered(wire, at(0, 0))).find(({ label }) => label === 'order, with its lines');
    }),
  );
  expect(one).toMatchObject({ insertTextFormat: InsertTextFormat.Snippet, insertTextMode: InsertTextMode.asIs });
  expect(other?.insertTextFormat).toBeUndefined();
  expect(other?.textEdit?.newText).not.toContain('$');
});

test('a blank typed behind a word with a closed list asks, any other blank does not', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\n  supply \n  pd \n');
  const context = { triggerKind: CompletionTriggerKind.TriggerCharacter, triggerCharacter: ' ' };
  const ask = (position: Position) =>
    wire.client.sendRequest(CompletionRequest.type, { textDocument, position, context });
  expect(await ask(at(1, 9))).toMatchObject({ items: [{ label: 'glazed' }, { label: 'edged' }, { label: 'uncut' }] });
  expect(await ask(at(2, 5))).toBeNull();
});

test('instruments of the nearest bench file are offered', async () => {
  const files = new Map([['file:///bench/bench.lentil', 'instrument FOC-B\n  kind manual focimeter\n']]);
  const wire = await connect({ files });
  await wire.open(URI, 'order A\n  reading 2026-11-24 with \n');
  expect((await offered(wire, at(1, 26))).map(({ label }) => label)).toEqual(['FOC-B']);
});

test('style is mended on save by the newest text', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\n  R -4.50\n');
  await wire.change(URI, { range: { start: at(1, 4), end: at(1, 5) }, text: '−' });
  const [action] =
    (await wire.client.sendRequest(CodeActionRequest.type, {
      textDocument,
      range: { start: at(0, 0), end: at(2, 0) },
      context: { diagnostics: [], only: ['source.fixAll'] },
    })) ?? [];
  expect(action).toMatchObject({
    kind: 'source.fixAll.lentil',
    edit: { documentChanges: [{ textDocument: { uri: URI, version: 2 }, edits: [{ newText: '-4.50' }] }] },
  });
});

test('a reading is added with places to fill in', async () => {
  const wire = await connect({ capabilities: FILLING_IN });
  await wire.open(URI, 'order A\n  R -4.50\n  L -4.50\n  design single-vision\n  pd 63\n');
  const actions = await wire.client.sendRequest(CodeActionRequest.type, {
    textDocument,
    range: { start: at(0, 7), end: at(0, 7) },
    context: { diagnostics: [], only: ['refactor'] },
  });
  const text = JSON.stringify(actions);
  expect(text).toMatch(/"snippet":\{"kind":"snippet","value":"\\n {2}reading \$\{1:\d{4}-\d\d-\d\d\}\\n {4}R {8}\$2/);
});

test('lenses, selection, tokens and the layout of a finished line are answered', async () => {
  const wire = await connect();
  await wire.open(URI, 'order A\nR -4.50\n\n');
  const { client } = wire;
  expect(await client.sendRequest(CodeLensRequest.type, { textDocument })).toMatchObject([
    { command: { title: 'unread' } },
  ]);
  expect(
    await client.sendRequest(SelectionRangeRequest.type, { textDocument, positions: [at(1, 3), at(0, 0)] }),
  ).toHaveLength(2);
  const whole = await client.sendRequest(SemanticTokensRequest.type, { textDocument });
  expect(whole?.data).toHaveLength(4 * 5);
  const range = { start: at(1, 0), end: at(1, 7) };
  expect((await client.sendRequest(SemanticTokensRangeRequest.type, { textDocument, range }))?.data).toHaveLength(
    2 * 5,
  );
  const layout = { tabSize: 2, insertSpaces: true };
  expect(
    await client.sendRequest(DocumentOnTypeFormattingRequest.type, {
      textDocument,
      position: at(2, 0),
      ch: '\n',
      options: layout,
    }),
  ).toEqual([{ range, newText: '  R           -4.50' }]);
});
