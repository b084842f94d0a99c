import { expect, test } from 'vitest';
import { messages, told } from '../../support/findings';
import { judged, pair } from '../../support/judged';

const STRONG = ['R +13.50', 'L +13.00', 'pd 52', 'height 20'];
const read = (prism: string, order = STRONG): string =>
  pair(order, ['R +13.50', 'L +13.00', 'pd 52', 'height R 20 L 20', prism]);

test.each([
  // Both down, both up, both towards the examiner's right; the amounts about the 1 prism dioptre.
  ['prism R 12 BD L 12 BD', ['warning [R 12 BD]']],
  ['prism R 1.01 BU L 1.50 BU', ['warning [R 1.01 BU]']],
  ['prism R 2.00 BI L 2.00 BO', ['warning [R 2.00 BI]']],
  ['prism R 1.00 BD L 1.00 BD', []],
  ['prism R 2.00 BD L 0.50 BD', []],
  // Against each other it is the business of the pair.
  ['prism R 2.00 BD L 2.00 BU', []],
  ['prism R 2.00 BI L 2.00 BI', []],
  ['prism R 2.00 BD', []],
])('%s', (prism, expected) => {
  expect(told(read(prism), 'prism-in-both')).toEqual(expected);
});

test('says what each lens shows, and stands beside a verdict that it leaves no plain one', () => {
  const text = read('prism R 3.00 BD L 3.00 BD');
  expect(messages(text, 'prism-in-both')).toEqual([
    'R measures 3.00 base down, L measures 3.00 base down. Nobody ordered this. The pair is balanced, but the wearer looks through it with both eyes. If it is thinning, write `thinning` into the order.',
  ]);
  // Centres at the ordered heights make none, so with them the two readings contradict each other.
  expect(judged(text)).toMatchObject({ verdict: 'incomplete', unresolved: ['places-contradict'] });
  const withoutHeights = text.replace(/^ +height R 20 L 20$/m, '');
  expect(judged(withoutHeights).reservations).toContain('prism-in-both');
});

test('ordered prism and thinning are wanted', () => {
  expect(told(read('prism R 2.00 BD L 2.00 BD', [...STRONG, 'thinning 2.00 BD']), 'prism-in-both')).toEqual([]);
  expect(told(read('prism R 2.00 BD L 2.00 BD', [...STRONG, 'prism R 2.00 BD L 2.00 BD']), 'prism-in-both')).toEqual(
    [],
  );
});

// The usual thinning of a progressive, of which the order says nothing.
test('equal thinning of a progressive is left alone, and what goes beyond it is not', () => {
  const order = ['R +2.00', 'L +2.00', 'add +2.00', 'pd R 31 L 31', 'height R 20 L 20', 'design progressive'];
  const reading = (prism: string): string =>
    pair(order, ['R +2.00', 'L +2.00', 'add +2.00', `${prism} at prism-point`]);
  expect(told(reading('prism R 1.50 BD L 1.50 BD'), 'prism-in-both')).toEqual(['hint [R 1.50 BD]']);
  expect(told(reading('prism R 1.50 BI 1.50 BD L 1.50 BO 1.50 BD'), 'prism-in-both')).toEqual([
    'warning [R 1.50 BI 1.50 BD]',
  ]);
});
