/** House sets: what they ask beyond the published set, band by band, and where they ask less than it. */
import { describe, expect, test } from 'vitest';
import { toleranceSets } from '../../orders';
import { messages, told } from '../support/findings';
import { judged } from '../support/judged';

/** A single-vision job judged by a house set of these lines. */
const job = (limits: readonly string[], lens: string, read: string, parent = 'z80.1-2015'): string =>
  [
    'standard house',
    `tolerance house from ${parent}`,
    ...limits.map((line) => `  ${line}`),
    'order H-1',
    `  R ${lens}`,
    '  L -1.00',
    '  design single-vision',
    '  pd 63',
    '  frame A 50 DBL 18',
    '  reading 2026-11-24',
    `    R ${read}`,
    '    L -1.00',
    '    prism R 0 L 0',
  ].join('\n');

describe('bands are taken one after another, as in a printed table', () => {
  // The bands of the notation's own example.
  const AXIS = ['axis to 0.25 10', 'axis to 0.50 6', 'axis above 1.50 2'];
  test.each([
    ['-0.25', 10, 'accept', []],
    ['-0.25', 11, 'accept', ['house-limit']],
    ['-0.50', 6, 'accept', []],
    ['-0.50', 7, 'accept', ['house-limit']],
    ['-0.26', 6, 'accept', []],
    ['-0.26', 7, 'accept', ['house-limit']],
    // No band holds 0.51 to 1.50: the published 5 and 3 degrees alone count.
    ['-0.75', 5, 'accept', []],
    ['-1.50', 3, 'accept', []],
    ['-1.75', 2, 'accept', []],
    ['-1.75', 3, 'reject', []],
    ['-0.50', 8, 'reject', []],
  ])('cylinder %s turned by %s', (cylinder, turn, verdict, reservations) => {
    const axis = String(90 + turn).padStart(3, '0');
    const evaluation = judged(job(AXIS, `-2.00 ${cylinder} x 090`, `-2.00 ${cylinder} x ${axis}`));
    expect([evaluation.verdict, evaluation.reservations]).toEqual([verdict, reservations]);
  });

  test('a line without a band holds everywhere that no line before it does', () => {
    const limits = ['power to 2.00 0.05', 'power 0.10'];
    const off = (power: number, by: number): boolean | undefined =>
      judged(job(limits, `-${power.toFixed(2)}`, `-${(power + by).toFixed(2)}`)).measures.find(
        ({ quantity }) => quantity === 'power',
      )?.house?.breached;
    expect([off(2, 0.05), off(2, 0.06), off(2.25, 0.1), off(2.25, 0.11)]).toEqual([false, true, false, true]);
  });
});

describe('the published set decides', () => {
  test('a wider house limit lets nothing pass', () => {
    expect(judged(job(['power 0.50'], '-2.00', '-2.25')).verdict).toBe('reject');
  });

  test('the verdict names the published set, and the house beside it', () => {
    const { set, house, standard } = judged(job(['power 0.06'], '-2.00', '-2.00'));
    expect([set?.id, house?.name, standard]).toEqual(['z80.1-2015', 'house', 'house']);
  });
});

describe('a limit wider than its parent’s is told at its line', () => {
  const looser = (...limits: readonly string[]): readonly string[] =>
    told(job(limits, '-2.00', '-2.00'), 'house-looser');

  test.each([
    // The notation's own example is tighter everywhere.
    [['power 0.12', 'axis to 0.25 10', 'axis to 0.50 6', 'axis above 1.50 2', 'pd 2.0', 'height 0.5'], []],
    [['power 0.13'], []],
    [['power 0.14'], ['warning [power 0.14]']],
    // Above 6.50 the set allows 2 %, which is 0.16 at 8.00 and only just 0.13 at 6.51.
    [['power above 8.00 0.16'], []],
    [['power above 7.00 0.16'], ['warning [power above 7.00 0.16]']],
    [['cylinder 0.13'], []],
    [['cylinder 0.15'], ['warning [cylinder 0.15]']],
    [['cylinder above 2.00 0.15'], []],
    [['axis to 0.25 14', 'axis to 0.50 7', 'axis to 0.75 5', 'axis to 1.50 3', 'axis above 1.50 2'], []],
    // Of two bands only the second reaches a row that is tighter.
    [['axis to 0.25 14', 'axis to 1.00 5'], ['warning [axis to 1.00 5]']],
    [['axis 3'], ['warning [axis 3]']],
    // What the first line holds is no matter of the second.
    [['axis above 1.50 2', 'axis above 0.75 3'], []],
    [['add 0.12'], []],
    [['add 0.18'], ['warning [add 0.18]']],
    [['add above 4.00 0.18'], []],
    [['prism 0.33'], []],
    [['prism 0.5'], ['warning [prism 0.5]']],
    [['pd 2.5', 'near-pd 2.5'], []],
    [['pd 2.6'], ['warning [pd 2.6]']],
    [['height 1.0', 'base-curve 0.75', 'thickness 0.3'], []],
    [
      ['height 1.5', 'base-curve 1.0'],
      ['warning [height 1.5]', 'warning [base-curve 1.0]'],
    ],
  ])('%s', (limits, expected) => {
    expect(looser(...limits)).toEqual(expected);
  });

  test('with the row it is wider than', () => {
    expect(messages(job(['axis to 1.00 5'], '-2.00', '-2.00'), 'house-looser')).toEqual([
      '5° for axis is wider than 3° of z80.1-2015 (axis, cylinder above 0.75 to 1.50 D). The narrower limit decides.',
    ]);
  });

  test.each(toleranceSets.map(({ id }) => [id] as const))('nothing is wider than nothing: %s', (id) => {
    const limits = ['power 0', 'cylinder 0', 'axis 0', 'add 0', 'prism 0', 'pd 0', 'height 0', 'thickness 0'];
    expect(told(job(limits, '-2.00', '-2.00', id), 'house-looser')).toEqual([]);
    const wide = ['power 9', 'cylinder 9', 'axis 90'];
    expect(told(job(wide, '-2.00', '-2.00', id), 'house-looser')).toHaveLength(3);
  });
});
