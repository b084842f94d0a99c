import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type Block, type LentilDocument, type Line, opensBlock, parseDocument, type Range } from '../../grammar';
import { BENCH } from '../support/lines';
import { anyText as anyTextWithMarks, holds, seed } from './support/random-text';

interface Edit {
  readonly range: Range;
  readonly text: string;
}

const linesOf = ({ blocks }: LentilDocument): Line[] => blocks.flatMap(({ lines }) => lines);
const shapeOf = ({ blocks }: LentilDocument) =>
  blocks.map(({ kind, lines }) => [kind, ...lines.map(({ text, end }) => text + end)]);

/** Text that an edit brings in: line ends in all combinations, block words, and pieces of lines. */
const inserted = fc
  .array(
    fc.constantFrom(
      '\n',
      '\r',
      '\r\n',
      '\n\r',
      'order A',
      'ordr B',
      'tolerance T',
      '  R -4.50',
      'x',
      ' ',
      '# c',
      'end',
    ),
    { maxLength: 5 },
  )
  .map((parts) => parts.join(''));

/** A byte order mark that an edit could bring to the front is left out: the text after it would have other columns. */
const anyText = anyTextWithMarks.map((text) => text.replaceAll('\uFEFF', ''));

/** Places may lie outside the text. */
const place = fc.record({ line: fc.integer({ min: 0, max: 20 }), character: fc.integer({ min: 0, max: 30 }) });

const edit: fc.Arbitrary<Edit> = fc.record({ one: place, other: place, text: inserted }).map(({ one, other, text }) => {
  const inOrder = one.line < other.line || (one.line === other.line && one.character <= other.character);
  return { range: inOrder ? { start: one, end: other } : { start: other, end: one }, text };
});

const script = fc.array(edit, { minLength: 1, maxLength: 6 });

/** The text after an edit, by the reference library of the language-server protocol. */
function editedText(text: string, { range, text: put }: Edit): string {
  const document = TextDocument.create('file:///a.lentil', 'lentil', 1, text);
  return TextDocument.applyEdits(document, [{ range, newText: put }]);
}

describe(`any script of edits, seed ${seed}`, () => {
  test('makes the text that the reference library makes', () => {
    holds(2000, anyText, script, (start, edits) => {
      let text = start;
      let document = parseDocument(text);
      for (const one of edits) {
        text = editedText(text, one);
        document = document.edit(one.range, one.text);
        expect(document.text()).toBe(text);
      }
    });
  });

  test('makes the blocks of a fresh parse', () => {
    holds(2000, anyText, fc.constantFrom('', '\uFEFF'), script, (start, mark, edits) => {
      let document = parseDocument(mark + start);
      for (const { range, text } of edits) {
        document = document.edit(range, text);
        const fresh = parseDocument(document.text());
        expect(shapeOf(document)).toEqual(shapeOf(fresh));
        expect([...document.starts]).toEqual([...fresh.starts]);
        expect(document.byteOrderMark).toBe(fresh.byteOrderMark);
      }
    });
  });

  test('keeps every line above and below', () => {
    holds(2000, anyText, edit, (start, { range, text }) => {
      const document = parseDocument(start);
      const before = linesOf(document);
      const after = linesOf(document.edit(range, text));
      // The line above an edit may end in a CR that a LF of the edit joins.
      const above = Math.min(range.start.line, before.length - 1) - 1;
      for (let at = 0; at < above; at++) expect(after[at]).toBe(before[at]);
      for (let at = before.length - 1; at > range.end.line; at--)
        expect(after[after.length - before.length + at]).toBe(before[at]);
    });
  });

  test('has the slices of its text', () => {
    holds(2000, anyText, edit, (start, { range }) => {
      const reference = TextDocument.create('file:///a.lentil', 'lentil', 1, start);
      expect(parseDocument(start).slice(range)).toBe(reference.getText(range));
    });
  });
});

const STORE = `${BENCH}\norder QL-1043\n  make R\n  R -2.00\n\ntolerance house from z80.1-2015\n  power 0.12\n`;

/** Blocks of the first document that the second holds no longer. */
const lost = (before: LentilDocument, after: LentilDocument): Block[] =>
  before.blocks.filter((block) => !after.blocks.includes(block));

describe('an edit inside one block', () => {
  const document = parseDocument(STORE);
  const numbers = Array.from({ length: document.lineCount }, (_, number) => number);
  const isFirst = (number: number): boolean => document.starts.includes(number);

  test.each(numbers.filter((number) => number === 0 || !isFirst(number)))('leaves all others, line %i', (number) => {
    const at = { line: number, character: (document.line(number) as Line).text.length };
    expect(opensBlock(`${document.line(number)?.text} # mark`)).toBe(null);
    const edited = document.edit({ start: at, end: at }, ' # mark');
    expect(lost(document, edited)).toEqual([document.blocks[document.blockAt(number)]]);
    expect(edited.blocks).toHaveLength(document.blocks.length);
  });

  test.each(numbers.filter((number) => number > 0 && isFirst(number)))(
    'on its first line leaves all others, line %i',
    (number) => {
      const at = { line: number, character: (document.line(number) as Line).text.length };
      const edited = document.edit({ start: at, end: at }, ' # mark');
      const block = document.blockAt(number);
      expect(lost(document, edited)).toEqual([document.blocks[block]]);
      expect(edited.blocks).toHaveLength(document.blocks.length);
    },
  );

  test('that opens a block cuts it in two', () => {
    const at = { line: 11, character: 0 };
    expect(document.edit({ start: at, end: at }, 'order QL-1041\n').blocks.map(({ kind }) => kind)).toEqual([
      'preamble',
      'instrument',
      'order',
      'order',
      'order',
      'tolerance',
    ]);
  });

  test('keeps the tree of a line that is written anew as it was', () => {
    const line = document.line(11) as Line;
    const range = { start: { line: 11, character: 0 }, end: { line: 11, character: line.text.length } };
    expect(document.edit(range, line.text).line(11)).toBe(line);
  });
});

describe('a CR and a LF', () => {
  const at = (line: number, character: number): Range => ({ start: { line, character }, end: { line, character } });

  test.each<[string, string, Range, string, string[]]>([
    ['join when a LF comes behind a CR', 'a\rb', at(1, 0), '\n', ['a\r\n', 'b']],
    ['join when a CR comes before a LF', 'a\nb', at(0, 1), '\r', ['a\r\n', 'b']],
    [
      'join when what stood between them goes',
      'a\rx\nb',
      { start: { line: 1, character: 0 }, end: { line: 1, character: 1 } },
      '',
      ['a\r\n', 'b'],
    ],
    ['stay apart with something between them', 'a\r\nb', at(0, 1), '\rx', ['a\r', 'x\r\n', 'b']],
    ['join across a block border', 'order A\rorder B', at(1, 0), '\n', ['order A\r\n', 'order B']],
  ])('%s', (_, text, range, put, lines) => {
    const edited = parseDocument(text).edit(range, put);
    expect(linesOf(edited).map((line) => line.text + line.end)).toEqual(lines);
    expect(shapeOf(edited)).toEqual(shapeOf(parseDocument(lines.join(''))));
  });
});

// Language-server protocol 3.17, “Position”: a character past the line’s end counts as its end.
describe('a place outside the text', () => {
  const document = parseDocument('order A\nR -4.50');

  test.each([
    [{ line: 0, character: 99 }, 'order A!\nR -4.50'],
    [{ line: 1, character: 99 }, 'order A\nR -4.50!'],
    [{ line: 9, character: 0 }, 'order A\nR -4.50!'],
    [{ line: 9, character: 9 }, 'order A\nR -4.50!'],
    [{ line: 0, character: -3 }, '!order A\nR -4.50'],
    [{ line: -2, character: 3 }, '!order A\nR -4.50'],
  ])('%j is drawn in', (position, text) => {
    expect(document.edit({ start: position, end: position }, '!').text()).toBe(text);
  });

  test('there is no line', () => {
    expect(document.line(-1)).toBeUndefined();
    expect(document.line(2)).toBeUndefined();
    expect(document.blockAt(99)).toBe(0);
  });
});
