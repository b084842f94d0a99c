/** Names that several orders of a file share, carried from edit to edit. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyseDocument, carryContributors, contextOf, type LentilDocument, parseDocument } from '../../orders';
import { holds, seed } from '../grammar/support/random-text';

const shared = (document: LentilDocument) => [...contextOf(document).sharedNames].sort();

/** How many blocks two documents share at their ends, as an editor finds them. */
function ends(before: LentilDocument, after: LentilDocument): readonly [number, number] {
  const most = Math.min(before.blocks.length, after.blocks.length);
  let head = 0;
  while (head < most && before.blocks[head] === after.blocks[head]) head++;
  let tail = 0;
  while (tail < most - head && before.blocks.at(-1 - tail) === after.blocks.at(-1 - tail)) tail++;
  return [head, tail];
}

test('an order is told as long as another has its name, and no longer', () => {
  const before = parseDocument('order A\n  R plano\norder B\n  R plano\norder C\n  R plano');
  expect(shared(before)).toEqual([]);
  analyseDocument(before);
  const after = before.edit({ start: { line: 4, character: 6 }, end: { line: 4, character: 7 } }, 'A');
  carryContributors(before, after, ...ends(before, after));
  const codes = (document: LentilDocument) =>
    analyseDocument(document).blocks.map(({ findings }) => findings.some(({ code }) => code === 'order-twice'));
  expect(codes(after)).toEqual([true, false, true]);
  const again = after.edit({ start: { line: 0, character: 6 }, end: { line: 0, character: 7 } }, 'D');
  carryContributors(after, again, ...ends(after, again));
  expect(codes(again)).toEqual([false, false, false]);
});

test('a name in quotes is the same name, with its quotes doubled inside', () => {
  expect(shared(parseDocument('order "A"\norder A\norder "A""B"\norder "A"""'))).toEqual([['A', 2]]);
});

const edits = fc.array(
  fc.record({
    line: fc.nat(12),
    gone: fc.nat(2),
    text: fc.constantFrom('order A\n', 'order B\n', 'order "A"\n  R -1.00\n', '  L -1.00\n', '', 'instrument A\n'),
  }),
  { maxLength: 8 },
);

test(`carried names are those of the whole text (seed ${seed})`, () => {
  holds(300, edits, (all) => {
    let document = parseDocument('order A\n  R plano\norder B\norder C\ninstrument X\norder B');
    shared(document);
    for (const { line, gone, text } of all) {
      const range = { start: { line, character: 0 }, end: { line: line + gone, character: 0 } };
      const after = document.edit(range, text);
      carryContributors(document, after, ...ends(document, after));
      document = after;
      expect(shared(document)).toEqual(shared(parseDocument(document.text())));
    }
  });
});
