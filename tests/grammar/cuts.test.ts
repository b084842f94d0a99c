import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockAt, cutsOf, parseDocument, partOf } from '../../grammar';

/** Cut and made one by one, the blocks are those of the document, and so they are when the text is handed on in parts. */
function checkCuts(text: string): void {
  const { blocks, starts } = parseDocument(text);
  const cuts = cutsOf(text);
  const plain = (kind: string, lines: readonly { text: string; end: string }[]) => [
    kind,
    lines.map((line) => line.text + line.end),
  ];
  const whole = blocks.map(({ kind, lines }) => plain(kind, lines));
  const middle = cuts.kinds.length >> 1;
  const parts = [partOf(cuts, 0, middle), partOf(cuts, middle, cuts.kinds.length)];
  const made = (each: typeof cuts) =>
    each.kinds.map((_, at) => {
      const { kind, lines } = blockAt(each, at);
      return plain(kind, lines);
    });
  expect(made(cuts)).toEqual(whole);
  expect(parts.flatMap(made)).toEqual(whole);
  expect(parts.flatMap(({ firstLines }) => firstLines)).toEqual([...starts].slice(0, -1));
}

describe('cuts', () => {
  test.each([
    ['nothing', ''],
    ['a block without a line end', 'order A'],
    ['a line end at the end', 'order A\n  R +1.00\n'],
    ['lines above the first block', 'standard z80.1-2015\n\norder A\n\norder B\n\n'],
    ['a byte order mark', '\uFEFForder A\r\n  R +1.00\r\norder B'],
    ['block words below the margin', '  order A\n\torder B\n  R +1.00\n   tolerance house\n'],
    ['an opening word that is misspelt', 'ordr A\n  R +1.00\nordre B\r\rinstrument C\r\n'],
    ['capitals, and an eye at the margin', 'ORDER A\nR +1.00\nOrder B\nadd +2.00\n'],
  ])('are the blocks of a document: %s', (_, text) => checkCuts(text));

  test('are the blocks of any text', () => {
    const piece = fc.constantFrom(
      'order ',
      'Order A',
      'ordr B',
      'R +1.00',
      '  ',
      '\t',
      '\n',
      '\r\n',
      '\r',
      'instrument X',
      'tolerance',
      'standard z',
      '"',
      '#',
      'x',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => checkCuts(pieces.join(''))),
      { numRuns: 500 },
    );
  });
});
