import fc from 'fast-check';
import { expect, test } from 'vitest';
import type {
  DocumentSymbol,
  Position,
  Range,
  SelectionRange,
  TextDocumentEdit,
  TextEdit,
} from 'vscode-languageserver';
import { FEATURES } from '../../server/features';
import type { Snapshot } from '../../server/snapshot';
import { BIFOCAL, covered, options, sample, WHOLE } from './support/sample';

/** Asks every feature about a text and checks that every range lies inside it. */
function checkRanges(text: string): void {
  const { snapshot } = sample(text.replaceAll('|', ''));
  const lines = snapshot.document.text().split(/\r\n|\r|\n/);
  const inside = ({ start, end }: Range): void => {
    for (const { line, character } of [start, end]) {
      expect(Number.isInteger(line) && Number.isInteger(character)).toBe(true);
      expect(line).toBeGreaterThanOrEqual(0);
      expect(line).toBeLessThan(lines.length);
      expect(character).toBeGreaterThanOrEqual(0);
      expect(character).toBeLessThanOrEqual((lines[line] as string).length);
    }
    expect(start.line < end.line || (start.line === end.line && start.character <= end.character)).toBe(true);
  };
  const about = { textDocument: { uri: snapshot.uri } };
  const { diagnostics, inlayHints, codeActions, hover, documentSymbols, folding } = FEATURES;
  for (const { range, relatedInformation } of diagnostics(snapshot.analysed(), options())) {
    inside(range);
    for (const { location } of relatedInformation ?? []) inside(location.range);
  }
  for (const { position } of inlayHints(snapshot, { ...about, range: WHOLE }, options()))
    inside({ start: position, end: position });
  const actions = codeActions(snapshot, { ...about, range: WHOLE, context: { diagnostics: [] } }, options()) ?? [];
  for (const { edit } of actions)
    for (const { edits } of (edit?.documentChanges ?? []) as TextDocumentEdit[])
      for (const one of edits) if ('range' in one) inside(one.range);
  const position = { line: lines.length - 1, character: (lines.at(-1) ?? '').length };
  const shown = hover(snapshot, { ...about, position }, options());
  if (shown?.range) inside(shown.range);
  checkTyping(snapshot, position, lines, inside);
  checkSymbols(documentSymbols(snapshot, about, options()) as DocumentSymbol[], inside);
  for (const { startLine, endLine } of folding(snapshot, about, options())) {
    inside({ start: { line: startLine, character: 0 }, end: { line: endLine, character: 0 } });
  }
}

/** What is asked at the end of the text while somebody types it. */
function checkTyping(
  snapshot: Snapshot,
  position: Position,
  lines: readonly string[],
  inside: (range: Range) => void,
): void {
  const about = { textDocument: { uri: snapshot.uri } };
  const { codeLens, completion, onTypeFormatting, selectionRanges, semanticTokens } = FEATURES;
  for (const { textEdit } of completion(snapshot, { ...about, position }, options())?.items ?? []) {
    const { range } = textEdit as TextEdit;
    inside(range);
    // An editor drops an item whose range leaves the line or does not hold the cursor.
    expect([range.start.line, range.end.line]).toEqual([position.line, position.line]);
    expect(range.start.character <= position.character && position.character <= range.end.character).toBe(true);
  }
  for (const { range } of codeLens(snapshot, about) ?? []) inside(range);
  const layout = { tabSize: 2, insertSpaces: true };
  for (const { range } of onTypeFormatting(snapshot, { ...about, position, ch: '\n', options: layout })) inside(range);
  const [innermost] = selectionRanges(snapshot, { ...about, positions: [position] });
  for (let one = innermost; one; one = one.parent as SelectionRange) {
    inside(one.range);
    if (one.parent) {
      expect(isBefore(one.parent.range.start, one.range.start)).toBe(true);
      expect(isBefore(one.range.end, one.parent.range.end)).toBe(true);
    }
  }
  const data = semanticTokens(snapshot, about)?.data ?? [];
  let [line, end] = [0, 0];
  let start = 0;
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, right = 0, length = 0] = data.slice(at, at + 3);
    if (down > 0) [line, start, end] = [line + down, 0, 0];
    start += right;
    expect(start >= end && length > 0).toBe(true);
    end = start + length;
    expect(end).toBeLessThanOrEqual((lines[line] as string).length);
  }
}

/** An editor drops a whole outline for one blank name or one place outside its parent. */
function checkSymbols(symbols: readonly DocumentSymbol[], inside: (range: Range) => void, parent?: Range): void {
  for (const { name, range, selectionRange, children } of symbols) {
    expect(name.trim()).not.toBe('');
    inside(range);
    for (const [inner, outer] of [[selectionRange, range], ...(parent ? [[range, parent] as const] : [])] as const) {
      expect(isBefore(outer.start, inner.start) && isBefore(inner.end, outer.end)).toBe(true);
    }
    checkSymbols(children ?? [], inside, range);
  }
}

const isBefore = (a: Range['start'], b: Range['start']): boolean =>
  a.line < b.line || (a.line === b.line && a.character <= b.character);

test('a text cut after any character has only places inside it', () => {
  for (let end = 0; end <= BIFOCAL.length; end++) checkRanges(BIFOCAL.slice(0, end));
});

const words = fc.constantFrom(
  'order',
  'reading',
  'R',
  'L',
  'both',
  'add',
  'pd',
  'prism',
  'lines',
  'again',
  'standard',
  'instrument',
  'defaults',
  'with',
  'x',
  '->',
  '/',
  '@',
  '#',
  '"',
  '“',
  '👓',
  '−',
  'é',
);
const figures = fc.constantFrom(
  '-4.50',
  '4.50',
  '-450',
  '022',
  '200',
  '63',
  '0',
  '+.5',
  '2026-11-24',
  '01/12/2026',
  '-4,50',
  '1/2',
);
const ends = fc.constantFrom('\n', '\r\n', '\r', '\n  ', '\n    ', ' ', ' ', ' ', '');

test('any text at all has only places inside it', () => {
  const texts = fc
    .array(fc.tuple(fc.oneof(words, figures), ends), { maxLength: 60 })
    .map((parts) => parts.flat().join(''));
  fc.assert(
    fc.property(fc.boolean(), texts, (mark, text) => checkRanges((mark ? '\uFEFF' : '') + text)),
    { seed: 1042, numRuns: 300 },
  );
});

test('a finding at the very end of a text covers the typed words', () => {
  const text = 'order A\n  R 4.50';
  const all = FEATURES.diagnostics(sample(text).snapshot.analysed(), options());
  const found = all.find(({ code }) => code === 'sign-missing');
  expect(found && covered(text, found.range)).toBe('4.50');
});
