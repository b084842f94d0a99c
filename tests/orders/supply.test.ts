import { expect, test } from 'vitest';
import { analyse } from '../../orders';

const supplyOf = (line: string): string | undefined =>
  analyse(`order A\n  R -2.00\n  L -2.00\n  ${line}\n`).blocks[0]?.order?.supply;

test.each([
  ['frame A 52 B 36 DBL 18', 'glazed'],
  ['pd 62', 'glazed'],
  ['pd L 31', 'glazed'],
  ['pd near 58', 'glazed'],
  ['height 17', 'glazed'],
  ['height L 17', 'glazed'],
  ['height 2 below datum', 'glazed'],
  ['supply edged', 'edged'],
  ['note "to stock"', 'uncut'],
])('with %j the lenses are taken to be %s', (line, supply) => {
  expect(supplyOf(line)).toBe(supply);
});

test('what is said goes before what is taken', () => {
  expect(supplyOf('pd 62\n  supply uncut')).toBe('uncut');
});
