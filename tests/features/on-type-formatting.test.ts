import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { onTypeFormatting } from '../../server/features/on-type-formatting';
import { sample } from './support/sample';

/** The text after a line has been finished; the mark stands where the editor puts the cursor then. */
function checkFinished(marked: string, expected: string, ch = '\n'): void {
  const { text, snapshot, position } = sample(marked);
  const options = { tabSize: 2, insertSpaces: true };
  const edits = onTypeFormatting(snapshot, { textDocument: { uri: '' }, position, ch, options });
  expect(TextDocument.applyEdits(TextDocument.create('', 'lentil', 0, text), edits)).toBe(expected);
}

test('the finished line is laid out', () => {
  checkFinished('order A\nR -4.50 -0.75x022\n|', 'order A\n  R           -4.50 -0.75 x 022\n');
  checkFinished(
    'order A\n reading 2026-11-24\n      pd    63.5  near 60 # box\n      |',
    'order A\n reading 2026-11-24\n    pd       63.5 near 60  # box\n      ',
  );
});

test('lines around it stay as they are, also the one that is being typed', () => {
  checkFinished('order A\npd 63\nheight 17\n|add +2.00\n', 'order A\npd 63\n  height      17\nadd +2.00\n');
});

test.each([
  ['order A\n  R -4.50\n\n|', '\n'],
  ['# a  note\n|', '\n'],
  ['ordr A\nR -4.50\n|', '\n'],
  ['|order   A', '\n'],
  ['order   A|', ';'],
])('nothing changes: %j', (marked, ch) => checkFinished(marked, marked.replace('|', ''), ch));

test('a line end of two characters is left whole', () => {
  checkFinished('order A\r\npd 63\r\n|', 'order A\r\n  pd          63\r\n');
});
