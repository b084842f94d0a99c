import { expect, test } from 'vitest';
import configuration from '../../grammar/language-configuration.json';

const { pattern, flags } = configuration.wordPattern;
const wordsOf = (line: string) => line.match(new RegExp(pattern, `g${flags}`));

const checkWords = (line: string, ...words: readonly string[]) => expect(wordsOf(line)).toEqual(words);

test('figures keep their sign and names their hyphens', () => {
  checkWords('R -4.50 −0.75 x 022', 'R', '-4.50', '−0.75', 'x', '022');
  checkWords('design bifocal flat-top 28', 'design', 'bifocal', 'flat-top', '28');
  checkWords('standard z80.1-2015', 'standard', 'z80.1-2015');
  checkWords('lens resin-1.50', 'lens', 'resin-1.50');
  checkWords('reading 2026-11-24 14:30 with FOC-A', 'reading', '2026-11-24', '14:30', 'with', 'FOC-A');
});

test('figures that touch are words of their own', () => {
  checkWords('R-4.50-0.75x22', 'R', '-4.50', '-0.75', 'x22');
  checkWords('add R-4,50->-2,50', 'add', 'R', '-4,50', '-2,50');
});

test('only block words indent the next line', () => {
  const { pattern: block, flags: blockFlags } = configuration.indentationRules.increaseIndentPattern;
  const indents = new RegExp(block, blockFlags);
  expect(['order QL-1', '  reading 2026-11-24', 'Tolerance house'].every((line) => indents.test(line))).toBe(true);
  expect(['  R -4.50', '# order', 'order-by 3', 'reads-to 0.125'].some((line) => indents.test(line))).toBe(false);
});
