import { expect, test } from 'vitest';
import { Line } from '../../grammar';

const treeOf = (text: string) => new Line(text, '\n').parsed('order');

/** Asks for many lines, each once, and for one of them again and again. */
function passBy(returning: string): void {
  for (let number = 0; number < 5000; number++) {
    treeOf(`order JOB-${number}`);
    if (number % 100 === 0) treeOf(returning);
  }
}

/** A line is kept from its second coming on. */
const keptTreeOf = (text: string) => {
  treeOf(text);
  return treeOf(text);
};

test('a line that keeps returning keeps its tree', () => {
  const kept = keptTreeOf('  supply glazed');
  passBy('  supply glazed');
  expect(treeOf('  supply glazed')).toBe(kept);
});

test('a line that came once is not kept', () => {
  const first = treeOf('  height 16');
  expect(treeOf('  height 16')).not.toBe(first);
  expect(treeOf('  height 16')).toEqual(first);
});

test('a line that does not return is let go and read anew', () => {
  const kept = keptTreeOf('  height 17');
  // Kept lines alone push others out.
  for (let number = 0; number < 5000; number++) keptTreeOf(`order JOB-${number}`);
  expect(treeOf('  height 17')).not.toBe(kept);
  expect(treeOf('  height 17')).toEqual(kept);
});

test('what a line says in a tolerance is no matter of the memory of other blocks', () => {
  const plain = treeOf('  axis 2');
  expect(new Line('  axis 2', '\n').parsed('tolerance')).not.toEqual(plain);
});
