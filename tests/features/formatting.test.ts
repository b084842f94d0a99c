import { expect, test } from 'vitest';
import { formatting, rangeFormatting } from '../../server/features/formatting';
import { sample, URI } from './support/sample';

const TEXT = 'order A\nR-4.50\nL  -4.25\n';
const asked = { textDocument: { uri: URI }, options: { tabSize: 2, insertSpaces: true } };

/** The lines that an answer sets, by number. */
const lines = (edits: ReturnType<typeof formatting>) =>
  edits.map(({ range, newText }) => [range.start.line, range.end.character, newText]);

test('a whole document is laid out line by line', () => {
  expect(lines(formatting(sample(TEXT).snapshot, asked))).toEqual([
    [1, 6, '  R           -4.50'],
    [2, 8, '  L           -4.25'],
  ]);
  expect(formatting(sample('order A\n  R           -4.50\n').snapshot, asked)).toEqual([]);
});

test.each([
  ['one line', { start: { line: 2, character: 3 }, end: { line: 2, character: 4 } }, [2]],
  ['a line chosen with its end', { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } }, [1]],
  ['more than there is', { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } }, [1, 2]],
])('a range is laid out alone: %s', (_, range, expected) => {
  expect(rangeFormatting(sample(TEXT).snapshot, { ...asked, range }).map((edit) => edit.range.start.line)).toEqual(
    expected,
  );
});

test('a byte order mark that the editor keeps stays outside of the laid out line', () => {
  const [edit] = formatting(sample('\uFEFForder   A\n').snapshot, asked);
  expect(edit).toEqual({
    range: { start: { line: 0, character: 1 }, end: { line: 0, character: 10 } },
    newText: 'order A',
  });
});
