import { describe, expect, test } from 'vitest';
import { judged, pair } from '../support/judged';

const ORDER = ['R -2.00', 'L -2.00', 'pd 62', 'prism R 2.00 BI 0.50 BU L 2.00 BI', 'supply glazed'];
const READ = ['R -2.00', 'L -2.00', 'pd 62'];

/** The outcomes of the prism of the pair, and the verdict. */
function checkPrism(read: string, horizontal: string, vertical: string, verdict: string, order = ORDER): void {
  const { measures, verdict: found } = judged(pair(order, [...READ, read]));
  const outcome = (quantity: string): string | undefined =>
    measures.find((one) => one.quantity === quantity && one.eye === null)?.outcome;
  const across = measures.find(({ quantity }) => quantity === 'prism-horizontal' || quantity === 'pd')?.outcome;
  expect([across, outcome('prism-vertical'), found]).toEqual([horizontal, vertical, verdict]);
}

describe('a part of a prism that was ordered', () => {
  test('is inside where it was read', () => checkPrism('prism R 2.00 BI 0.50 BU L 2.00 BI', 'pass', 'pass', 'accept'));

  test('is not read where it is not mentioned', () =>
    checkPrism('prism R 2.00 BI L 2.00 BI', 'pass', 'not-read', 'incomplete'));

  test('is read where it is said to be none', () =>
    checkPrism('prism R 2.00 BI 0 BU L 2.00 BI', 'pass', 'fail', 'reject'));

  test('is read by a plain 0', () => checkPrism('prism R 0 L 0', 'fail', 'fail', 'reject'));

  test('is read by the angle of a base', () => checkPrism('prism R 2.06 base 014 L 2.00 BI', 'pass', 'pass', 'accept'));

  test('is not read where one of the repeats leaves it out', () => {
    const text = pair(ORDER, [...READ, 'prism R 2.00 BI 0.50 BU L 2.00 BI', 'again prism R 2.00 BI L 2.00 BI']);
    expect(judged(text).verdict).toBe('incomplete');
  });
});

test('a part that nobody ordered is none where it is not mentioned', () =>
  checkPrism('prism R 2.00 BI L 2.00 BI', 'pass', 'pass', 'accept', [
    'R -2.00',
    'L -2.00',
    'pd 62',
    'prism R 2.00 BI L 2.00 BI',
    'supply glazed',
  ]));
