/** A verdict names what it was judged by: the set and the decision rule. */
import { expect, test } from 'vitest';
import { analyse, type GuardBand, judgedByInWords } from '../../orders';
import { verdictInWords as inLine } from '../../orders/verdict-line';
import { verdictInWords as beside } from '../../server/features/verdict-words';

const TEXT =
  'order A\n  R -2.00\n  make R\n  design single-vision\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';
const HOUSE = `standard House\ntolerance House from z80.1-2015\n  power 0.06\n${TEXT}`;

function both(text: string, guard: GuardBand): readonly string[] {
  const block = analyse(text, { guard }).blocks.find(({ order }) => order !== null);
  if (!block?.order || !block.evaluation) throw new Error('no order');
  return [inLine(block.order, block.evaluation), beside(block.order, block.evaluation)];
}

test.each([
  ['simple', 'simple acceptance'],
  ['accept-when-sure', 'guarded acceptance'],
  ['reject-when-sure', 'guarded rejection'],
] as const)('%s is called %s', (guard, words) => {
  for (const line of both(`standard z80.1-2015\n${TEXT}`, guard))
    expect(line).toContain(`accept; z80.1-2015, ${words}`);
  for (const line of both(HOUSE, guard)) expect(line).toContain(`House from z80.1-2015, ${words}`);
});

test('without a set, and before a reading, there is no rule to name', () => {
  for (const line of both(TEXT, 'simple')) expect(line).not.toContain('acceptance');
  const unread = TEXT.slice(0, TEXT.indexOf('  reading'));
  for (const line of both(`standard z80.1-2015\n${unread}`, 'simple')) expect(line).not.toContain('acceptance');
  const { evaluation } = analyse(TEXT).blocks[0] ?? {};
  expect(evaluation && judgedByInWords(evaluation)).toBe('');
});
