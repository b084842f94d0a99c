import { expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver';
import { codeActions } from '../../server/features/code-actions';
import { diagnostics } from '../../server/features/diagnostics';
import { actionsAt, changesOf, results } from './support/actions';
import { options, sample } from './support/sample';

/** Asks at the marked place; compares each title with the text it leads to. */
function checkActions(
  marked: string,
  expected: Readonly<Record<string, string>>,
  only: string[] = ['quickfix'],
): CodeAction[] {
  const { snapshot } = sample(marked);
  const actions = actionsAt(marked, { only });
  for (const action of actions)
    expect(changesOf(action)[0]?.textDocument).toEqual({ uri: snapshot.uri, version: snapshot.version });
  expect(results(marked, { only })).toEqual(expected);
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
  const context = { diagnostics: [], only: ['quickfix'] };
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
  checkActions('order A\n  R 4|.50\n', {}, ['source.organizeImports']);
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
  const params = {
    textDocument: { uri: '' },
    range: mark.range,
    context: { diagnostics: [outdated, elsewhere], only: ['quickfix'] },
  };
  const actions = codeActions(snapshot, params, options()) ?? [];
  expect(actions.map((action) => action.diagnostics)).toEqual([[outdated], [outdated]]);
});

test('an editor that knows no versions gets plain changes', () => {
  const { snapshot, position } = sample('order A\n  R −4|.50\n');
  const { abilities, ...rest } = options();
  const params = { textDocument: { uri: '' }, range: { start: position, end: position }, context: { diagnostics: [] } };
  const [action] = codeActions(snapshot, params, { abilities: { ...abilities, versionedEdits: false }, ...rest }) ?? [];
  expect(Object.keys(action?.edit?.changes ?? {})).toEqual([snapshot.uri]);
});
