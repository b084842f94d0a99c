/**
 * The text after any edits is the one the editor has. Held against the text document of the language-server libraries
 * (vscode-languageserver-textdocument), which counts positions as the protocol says and a byte order mark as a column.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Range, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { analyse, parseDocument } from '../../orders';
import { Snapshot } from '../../server/snapshot';
import { applyChange } from '../../server/text-changes';

const SURROUNDINGS = { standard: 'z80.1-2015', shared: [] };
const EDITS = { seed: 2015, numRuns: 400 };

const piece = fc.constantFrom(
  'order A',
  'order B',
  '  R -4.50',
  '  L 4.25',
  'instrument FOC-A',
  'standard z80.1-2015',
  '  reading 2026-11-24 with FOC-A',
  'defaults',
  '  reads-to 0.125',
  '  pd 64',
  '',
  'x',
  '👓',
  '\uFEFF',
  '\u2028',
  ' ',
  '#',
);
const end = fc.constantFrom('\n', '\r\n', '\r', '', '\n', '\n');
const text = (most: number) =>
  fc.array(fc.tuple(piece, end), { maxLength: most }).map((parts) => parts.flat().join(''));
const position = fc.record({ line: fc.nat(14), character: fc.nat(16) });
const range: fc.Arbitrary<Range> = fc
  .tuple(position, position)
  .map(([a, b]) =>
    a.line < b.line || (a.line === b.line && a.character <= b.character) ? { start: a, end: b } : { start: b, end: a },
  );
const change: fc.Arbitrary<TextDocumentContentChangeEvent> = fc.oneof(
  { weight: 9, arbitrary: fc.record({ range, text: text(3) }) },
  { weight: 1, arbitrary: fc.record({ text: text(6) }) },
);

test('the text after any edits is the one the editor has', () => {
  fc.assert(
    fc.property(text(12), fc.array(change, { maxLength: 6 }), (start, changes) => {
      let document = parseDocument(start);
      let expected = start;
      for (const one of changes) {
        document = applyChange(document, one);
        // The library's document loses count after an edit past the end, so each edit has a new one.
        const editor = TextDocument.create('file:///a', 'lentil', 0, expected);
        expected = TextDocument.update(editor, [one], 1).getText();
        expect(document.text()).toBe(expected);
      }
    }),
    EDITS,
  );
});

test('what a snapshot keeps over any edits is what a new reading of the text finds', () => {
  fc.assert(
    fc.property(text(12), fc.array(change, { maxLength: 6 }), (start, changes) => {
      let snapshot = Snapshot.of('file:///a', 0, parseDocument(start), SURROUNDINGS);
      for (const [version, one] of changes.entries()) {
        snapshot = snapshot.after(applyChange(snapshot.document, one), version + 1, 0).analysed();
        const fresh = analyse(snapshot.document.text(), { standard: SURROUNDINGS.standard });
        const kept = fresh.blocks.map((_, index) => snapshot.block(index));
        const told = (blocks: typeof kept) =>
          blocks.map(({ findings, evaluation }) => [findings, evaluation?.verdict, evaluation?.measures]);
        expect(told(kept)).toEqual(told([...fresh.blocks]));
        const count = fresh.blocks.reduce((sum, { findings }) => sum + findings.length, 0);
        expect(Object.values(snapshot.tally).reduce((a, b) => a + b)).toBe(count);
      }
    }),
    EDITS,
  );
});

test('an edit in one order leaves the analysis of all others as it is', () => {
  const orders = Array.from({ length: 50 }, (_, index) => `order A${index}\n  R -1.00\n  L -1.00\n`).join('');
  const before = Snapshot.of('file:///a', 0, parseDocument(`standard z80.1-2015\n${orders}`), SURROUNDINGS).analysed();
  const at = { line: 62, character: 5 };
  const after = before.after(before.document.edit({ start: at, end: at }, '5'), 1, 62);
  const changed = after.document.blocks.flatMap((_, index) =>
    after.known(index) === before.block(index) ? [] : [index],
  );
  expect(changed).toEqual([before.document.blockAt(62)]);
});
