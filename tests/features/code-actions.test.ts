import { expect, test } from 'vitest';
import type { CodeAction, TextDocumentEdit, TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { codeActions } from '../../server/features/code-actions';
import { diagnostics } from '../../server/features/diagnostics';
import { options, sample } from './support/sample';

const changesOf = ({ edit }: CodeAction): TextDocumentEdit[] => (edit?.documentChanges ?? []) as TextDocumentEdit[];

/** Asks at the marked place; compares each title with the text it leads to. */
function checkActions(marked: string, expected: Readonly<Record<string, string>>, only?: string[]): CodeAction[] {
  const { text, snapshot, position } = sample(marked);
  const context = { diagnostics: [], ...(only ? { only } : {}) };
  const params = { textDocument: { uri: '' }, range: { start: position, end: position }, context };
  const actions = codeActions(snapshot, params, options()) ?? [];
  const document = TextDocument.create('', 'lentil', 0, text);
  const results = actions.map((action) => {
    const [change] = changesOf(action);
    expect(change?.textDocument).toEqual({ uri: snapshot.uri, version: snapshot.version });
    return [action.title, TextDocument.applyEdits(document, change?.edits as TextEdit[])];
  });
  expect(Object.fromEntries(results)).toEqual(expected);
  return actions;
}

test('a missing sign has one fix for each sign, and none is put forward', () => {
  const actions = checkActions('order A\n  R 4|.50 -0.75 x 022\n', {
    'Write +4.50': 'order A\n  R +4.50 -0.75 x 022\n',
    'Write -4.50': 'order A\n  R -4.50 -0.75 x 022\n',
  });
  expect(actions.filter(({ isPreferred }) => isPreferred)).toEqual([]);
});

test('a fix that keeps the meaning is put forward', () => {
  const [action] = checkActions('order A\n  R −4|.50\n', { 'Write the minus as -': 'order A\n  R -4.50\n' });
  expect(action).toMatchObject({ kind: 'quickfix', isPreferred: true });
});

test('only findings at the place are mended', () => {
  checkActions('order A\n  R 4.50\n  L| -4.50\n', {});
});

test('a fix uses the line ends of the text', () => {
  const text = 'order A\r\n  R -4.50\r\n  L -4.50\r\n  reading 2026-11-24 with FOC|-Z\r\n';
  const { snapshot, position } = sample(text);
  const context = { diagnostics: [] };
  const actions = codeActions(
    snapshot,
    { textDocument: { uri: '' }, range: { start: position, end: position }, context },
    options(),
  );
  const edits = actions?.flatMap(changesOf).flatMap((change) => change.edits);
  const written = edits?.map((edit) => ('newText' in edit ? edit.newText : '')).join('') ?? '';
  expect(written).toMatch(/^instrument FOC-Z\r\n/);
  expect(written).not.toMatch(/(?<!\r)\n/);
});

test('nothing is offered where another kind of action is asked for', () => {
  checkActions('order A\n  R 4|.50\n', {}, ['refactor']);
  expect(
    checkActions('order A\n  R −4|.50\n', { 'Write the minus as -': 'order A\n  R -4.50\n' }, ['quickfix']),
  ).toHaveLength(1);
});

test('an action belongs to the mark of its code and place, whatever the mark says', () => {
  const { snapshot } = sample('order A\n  R 4.50\n');
  const [mark] = diagnostics(snapshot.analysed(), options()).filter(({ code }) => code === 'sign-missing');
  if (!mark) throw new Error('the sample raises nothing');
  const outdated = { ...mark, message: 'worded by an older version' };
  const elsewhere = { ...mark, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } };
  const params = { textDocument: { uri: '' }, range: mark.range, context: { diagnostics: [outdated, elsewhere] } };
  const actions = codeActions(snapshot, params, options()) ?? [];
  expect(actions.map((action) => action.diagnostics)).toEqual([[outdated], [outdated]]);
});

test('an editor that knows no versions gets plain changes', () => {
  const { snapshot, position } = sample('order A\n  R −4|.50\n');
  const { abilities, ...rest } = options();
  const params = { textDocument: { uri: '' }, range: { start: position, end: position }, context: { diagnostics: [] } };
  const [action] =
    codeActions(snapshot, params, { abilities: { ...abilities, versionedEdits: false }, ...rest }) ?? [];
  expect(Object.keys(action?.edit?.changes ?? {})).toEqual([snapshot.uri]);
});
