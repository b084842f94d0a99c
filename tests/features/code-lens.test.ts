import { expect, test } from 'vitest';
import { codeLens } from '../../server/features/code-lens';
import { BIFOCAL, sample } from './support/sample';

/** Compares the lines that have a lens with what stands above them. */
function checkLenses(text: string, expected: readonly (readonly [line: string, title: string])[]): void {
  const { snapshot } = sample(text);
  const lenses = codeLens(snapshot, { textDocument: { uri: '' } });
  const lines = text.split('\n');
  expect(lenses?.map(({ range, command }) => [lines[range.start.line]?.trim(), command?.title])).toEqual(expected);
}

test('an order and its reading show the verdict, the counts and the measure that used up most of its limit', () => {
  // One eighth against a limit of 0.13 D is 96 %: 0.125 / 0.13. Limits from the Quick Reference Guide to ANSI
  // Z80.1-2015 (tests/tables/z80.1.test.ts).
  // Three measures of each power, two adds, PD and near PD, prism, three of the heights, two base curves.
  const inShort = '16 inside · most of its limit used: R cylinder, 96 %';
  checkLenses(BIFOCAL, [
    ['order QL-1042', `accept, near the limit; z80.1-2015, simple acceptance · ${inShort}`],
    ['reading 2026-11-24 14:30 by KO with FOC-A', inShort],
  ]);
});

test('what is outside and what is missing are counted, and a replaced reading keeps its own', () => {
  const order =
    'standard z80.1-2015\norder A\n  R -1.00\n  L -1.00\n  design single-vision\n  pd 64\n  supply glazed\n';
  const readings = '  reading 2026-11-24\n    R -1.50\n    L -1.00\n  reading 2026-11-25\n    R -1.00\n';
  checkLenses(order + readings, [
    [
      'order A',
      expect.stringMatching(
        /^incomplete: .* not read; z80.1-2015, simple acceptance · \d inside, \d not read$/,
      ) as unknown as string,
    ],
    // Off by 0.50 D against 0.13 D: 385 %. A sphere is held to having no cylinder as well.
    [
      'reading 2026-11-24',
      expect.stringMatching(/^3 inside, 1 outside · most of its limit used: R power, 385 %$/) as unknown as string,
    ],
    ['reading 2026-11-25', expect.stringMatching(/^\d inside$/) as unknown as string],
  ]);
});

test('an order without a reading, and one that nothing is judged by', () => {
  checkLenses('order A\n  R -1.00\n', [['order A', 'unread']]);
  checkLenses('order A\n  R -1.00\n  L -1.00\n  reading 2026-11-24\n    R -1.00\n', [
    ['order A', 'incomplete: no standard named'],
  ]);
});

test('a very large file has none', () => {
  const text = 'order A\n  R -1.00\n'.repeat(10_001);
  expect(codeLens(sample(text).snapshot, { textDocument: { uri: '' } })).toBeNull();
});
