import { describe, expect, test } from 'vitest';
import { UNREADABLE } from '../support/lines';
import { checkTold, read } from './support/check-told';

const checkPrism = (line: string, ...entries: readonly unknown[]): void => {
  checkTold(line, []);
  expect(read(line)).toEqual({ entries });
};

const up = { amount: 0.5, base: 'up' };

describe('both notations', () => {
  test('amounts with a base in words', () => {
    const both = [
      { eye: 'R', value: [{ amount: 2, base: 'in' }, up] },
      { eye: 'L', value: [{ amount: 2, base: 'in' }] },
    ];
    checkPrism('prism R 2.00 BI 0.50 BU L 2.00 BI', ...both);
    checkPrism('prism R2.00BI0.50BU L2.00BI', ...both);
    checkPrism('prism R BI 2 BU 0.50 L 2 base in', ...both);
    checkPrism('prism R 2 in 0.50 up L 2 in', ...both);
    checkPrism('prism R 2 BI / 0.50 BU L 2 BI', ...both);
  });

  test('a base in degrees', () => {
    checkPrism('prism R 2.06 base 014', { eye: 'R', value: [{ amount: 2.06, degrees: 14 }] });
    checkPrism('prism R 2.06 @ 14', { eye: 'R', value: [{ amount: 2.06, degrees: 14 }] });
    for (const degrees of [0, 360])
      checkPrism(`prism L 1 base ${degrees}`, { eye: 'L', value: [{ amount: 1, degrees }] });
    checkTold('prism R 2.06 base ‹361›', ['base-range']);
    checkTold('prism R 2.06 base ‹-14›', ['base-range']);
    expect(read('prism R 2.06 base 361')).toEqual({
      entries: [{ eye: 'R', value: [{ amount: 2.06, degrees: UNREADABLE }] }],
    });
  });

  test('a total, both, none, and where it was taken', () => {
    expect(read('prism total 4 BI')).toEqual({ total: true, entries: [{ value: [{ amount: 4, base: 'in' }] }] });
    checkPrism('prism both 2 BI', { eye: 'both', value: [{ amount: 2, base: 'in' }] });
    checkPrism('prism R 0 L 0', { eye: 'R', value: [{ amount: 0 }] }, { eye: 'L', value: [{ amount: 0 }] });
    checkTold('prism R 0.50 BO at prism-point with FOC-B', []);
    expect(read('prism R 0.50 BO at prism-point with FOC-B')).toMatchObject({
      qualifiers: { at: 'prism-point', with: 'FOC-B' },
    });
  });
});

test('fractions', () => {
  checkTold('prism R ‹1/2› BI', ['fraction']);
  checkTold('prism R 1 ‹1/2› BI', ['fraction']);
  expect(read('prism R 1/2 BI')).toEqual({ entries: [{ eye: 'R', value: [{ amount: 0.5, base: 'in' }] }] });
  expect(read('prism R 1 1/2 BI')).toEqual({ entries: [{ eye: 'R', value: [{ amount: 1.5, base: 'in' }] }] });
  checkTold('prism R ‹1/0› BI', ['fraction']);
  expect(read('prism R 1/0 BI')).toEqual({ entries: [{ eye: 'R', value: [{ amount: UNREADABLE, base: 'in' }] }] });
});

test('separators are understood, and told', () => {
  const value = [{ amount: 2, base: 'in' }, up];
  for (const sample of ['2 BI‹,› 0.50 BU', '2 BI ‹&› 0.50 BU', '2 BI ‹+› 0.50 BU']) {
    checkTold(`prism R ${sample}`, ['loose-form']);
    expect(read(`prism R ${sample.replace(/[‹›]/g, '')}`)).toEqual({ entries: [{ eye: 'R', value }] });
  }
});

describe('what is left to the rules of an order', () => {
  test('a signed amount is kept as a change', () => {
    for (const line of ['prism +2 BI', 'prism R -2 BI', 'prism R + 2 BI', 'prism both +2 BI', 'decentre R +2.5 in']) {
      checkTold(line, []);
      expect(read(line)).toMatchObject({ entries: [{ value: [{ relative: true }] }] });
    }
  });

  test('a base in degrees for both eyes, and an amount without its base', () => {
    for (const line of [
      'prism both 2 base 45',
      'prism 2 base 45',
      'prism total 4 base 45',
      'prism R 2',
      'decentre R 2.5',
    ])
      checkTold(line, []);
  });
});

test('a word or an amount that is missing', () => {
  checkTold('prism R 2 ‹BX›', ['unexpected-text']);
  checkTold('prism R 2 ‹base›', ['value-missing']);
  checkTold('prism R 2 base ‹x›', ['unexpected-text']);
  checkTold('prism R ‹BI›', ['value-missing']);
  checkTold('prism ‹R› L 2 BI', ['value-missing']);
  checkTold('‹prism›', ['value-missing']);
});

test('decentration is written in the same way', () => {
  checkPrism('decentre R 2.5 in 1 up', {
    eye: 'R',
    value: [
      { amount: 2.5, base: 'in' },
      { amount: 1, base: 'up' },
    ],
  });
  checkPrism('decentration 2.5 in', { value: [{ amount: 2.5, base: 'in' }] });
});

test('slab-off, its reverse and thinning keep the base that was typed', () => {
  checkPrism('slab-off R 3.00', { eye: 'R', value: 3 });
  expect(read('slab-off R 3.00 BU')).toEqual({ entries: [{ eye: 'R', value: 3, base: 'up' }] });
  expect(read('reverse-slab L 3.00')).toEqual({ reverse: true, entries: [{ eye: 'L', value: 3 }] });
  expect(read('thinning 1.50 BD')).toEqual({ which: 'thinning', entries: [{ value: 1.5, base: 'down' }] });
  checkTold('thinning none', []);
  expect(read('thinning none')).toEqual({ which: 'thinning', entries: [{ value: 0 }] });
  checkTold('thinning ‹non›', ['unknown-choice']);
  checkTold('height 17 ‹BU›', ['unexpected-text']);
  // The word of the line says which way it goes; the other base is a contradiction.
  for (const line of ['slab-off R 3.00 ‹BD›', 'reverse-slab L 3.00 ‹BU›', 'thinning 1.50 ‹BI›', 'inset R 2 ‹out›'])
    checkTold(line, ['unexpected-text']);
});
