import { expect, test } from 'vitest';
import type { SelectionRange } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { selectionRanges } from '../../server/features/selection-ranges';
import { sample } from './support/sample';

/** What the selection grows to from the mark outwards. */
function checkGrowth(marked: string, expected: readonly string[]): void {
  const { text, snapshot, position } = sample(marked);
  const [first] = selectionRanges(snapshot, { textDocument: { uri: '' }, positions: [position] });
  const document = TextDocument.create('', 'lentil', 0, text);
  const grown: string[] = [];
  for (let one: SelectionRange | undefined = first; one; one = one.parent) grown.push(document.getText(one.range));
  expect(grown).toEqual(expected);
}

const READING = '  reading 2026-11-24\n    R -4.50 -0.62 x 024\n    pd 63';

test('from a figure to its power, its entry, the line, the reading, the order and the file', () => {
  const marked = `# top\n\norder A\n  R -4.50\n\n${READING.replace('-0.62', '-0.|62')}\n\norder B\n`;
  checkGrowth(marked, [
    '-0.62',
    '-4.50 -0.62 x 024',
    'R -4.50 -0.62 x 024',
    '    R -4.50 -0.62 x 024',
    READING,
    `order A\n  R -4.50\n\n${READING}`,
    marked.replace('|', ''),
  ]);
});

test('a line of the order grows to what stands above the readings', () => {
  checkGrowth(`order A\n  pd 63 ne|ar 60\n${READING}`, [
    'near',
    'pd 63 near 60',
    '  pd 63 near 60',
    'order A\n  pd 63 near 60',
    `order A\n  pd 63 near 60\n${READING}`,
  ]);
});

test('a comment, a blank line and an empty text', () => {
  checkGrowth('order A  # by ph|one', ['phone', '# by phone', 'order A  # by phone']);
  checkGrowth('order A\n|\norder B', ['order A\n', 'order A\n\norder B']);
  checkGrowth('|', ['']);
});
