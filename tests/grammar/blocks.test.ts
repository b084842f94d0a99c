import { describe, expect, test } from 'vitest';
import { nearestWord, opensBlock } from '../../grammar';

describe('which line opens a block', () => {
  test.each([
    ['order QL-1', 'order'],
    ['  ORDER QL-1', 'order'],
    ['order', 'order'],
    ['order:', 'order'],
    ['instrument FOC-A', 'instrument'],
    ['defaults', 'defaults'],
    ['Tolerance house from z80.1-2015', 'tolerance'],
    ['\u00A0order QL-1', 'order'],
  ])('%j opens one', (line, kind) => {
    expect(opensBlock(line)).toBe(kind);
  });

  test.each(['ordr QL-1043', 'oder "QL 1"', 'orde 24/1042', 'instrumnet FOC-A', 'hello world', 'ordr QL-1 # late'])(
    '%j opens one that has no name',
    (line) => {
      expect(opensBlock(line)).toBe('unnamed');
    },
  );

  test.each([
    'R -4.50',
    'reading 2026-11-24',
    'standard z80.1-2015',
    '  ordr QL-1043',
    'ordr',
    'ordr QL 1',
    'heigth R',
    'order-by 3',
    'foo 3',
    'ordering',
    '# order QL-1',
    '"order" QL-1',
    '',
    '  ',
    'note order',
  ])('%j opens none', (line) => {
    expect(opensBlock(line)).toBe(null);
  });
});

test('near words: one slip up to four letters, two beyond, the first of equals', () => {
  const words = ['order', 'pd', 'add', 'height', 'note'];
  expect(
    ['ordr', 'roder', 'pf', 'ad', 'hieght', 'HEIGTH', 'zzz', 'notes', 'p'].map((word) => nearestWord(word, words)),
  ).toEqual(['order', 'order', 'pd', 'pd', 'height', 'height', null, 'note', 'pd']);
});
