import { expect, test } from 'vitest';
import type { DocumentSymbol, SymbolInformation } from 'vscode-languageserver';
import { documentSymbols } from '../../server/features/document-symbols';
import { BIFOCAL, covered, options, sample } from './support/sample';

const PARAMS = { textDocument: { uri: '' } };

const outline = (text: string): DocumentSymbol[] =>
  documentSymbols(sample(text).snapshot, PARAMS, options()) as DocumentSymbol[];

/** Compares the outline, written with two blanks for each level. */
function checkOutline(text: string, expected: readonly string[]): void {
  const written = (symbols: readonly DocumentSymbol[], indent: string): string[] =>
    symbols.flatMap(({ name, detail, children }) => [
      `${indent}${name}${detail ? ` (${detail})` : ''}`,
      ...written(children ?? [], `${indent}  `),
    ]);
  expect(written(outline(text), '')).toEqual(expected);
}

test('blocks stand in the outline by their names, readings below their order', () => {
  checkOutline(
    `${BIFOCAL}\n  reading 2026-11-25 stage edged\norder "tray 7"\ntolerance house from z80.1-2015\ndefaults\n`,
    [
      'FOC-A (instrument)',
      'QL-1042 (accept, near the limit; z80.1-2015, simple acceptance)',
      '  2026-11-24 14:30 (with FOC-A)',
      '  2026-11-25 (edged)',
      'tray 7 (unread)',
      'house from z80.1-2015 (tolerance)',
      'defaults (defaults)',
    ],
  );
});

test('a block without a name is called by its word', () => {
  checkOutline('order\n  reading\nordr QL-1\n', ['order (unread)', '  reading', 'QL-1 (ordr)']);
});

test('a symbol ends with the last line that says something, and its name is where it is typed', () => {
  const text = 'order A # first\n  R -1.00\n  reading 2026-11-24\n    R -1.00 # seen\n\n# the next one\n\norder B\n';
  const [first] = outline(text);
  expect(first && covered(text, first.range)).toBe(text.slice(0, text.indexOf('\n\n#')));
  expect(first && covered(text, first.selectionRange)).toBe('A');
  const [reading] = first?.children ?? [];
  expect(reading && covered(text, reading.range)).toBe('  reading 2026-11-24\n    R -1.00 # seen');
  expect(reading && covered(text, reading.selectionRange)).toBe('2026-11-24');
});

test('an outline without nesting names the order a reading belongs to', () => {
  const { abilities, ...rest } = options();
  const flat = { abilities: { ...abilities, nestedSymbols: false }, ...rest };
  const symbols = documentSymbols(sample(BIFOCAL).snapshot, PARAMS, flat) as SymbolInformation[];
  expect(symbols.map(({ name, containerName }) => [name, containerName])).toEqual([
    ['FOC-A', undefined],
    ['QL-1042', undefined],
    ['2026-11-24 14:30', 'QL-1042'],
  ]);
});

test('a very long list ends with a note of what is left out', () => {
  const symbols = outline(Array.from({ length: 5_003 }, (_, at) => `order A${at}\n`).join(''));
  expect(symbols).toHaveLength(5_001);
  expect(symbols.at(-1)?.name).toBe('… 3 more blocks, not listed');
});
