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

test('a line that keeps returning keeps its tree', () => {
  const first = treeOf('  supply glazed');
  passBy('  supply glazed');
  expect(treeOf('  supply glazed')).toBe(first);
});

test('a line that does not return is let go and read anew', () => {
  const first = treeOf('  height 17');
  passBy('  supply glazed');
  expect(treeOf('  height 17')).not.toBe(first);
  expect(treeOf('  height 17')).toEqual(first);
});

test('what a line says in a tolerance is no matter of the memory of other blocks', () => {
  const plain = treeOf('  axis 2');
  expect(new Line('  axis 2', '\n').parsed('tolerance')).not.toEqual(plain);
});
