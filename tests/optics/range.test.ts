import { describe, expect, test } from 'vitest';
import { OutOfRange, type PermittedRange, within } from '../../optics/range';

describe('within', () => {
  const cases: readonly (readonly [PermittedRange, readonly number[], readonly number[]])[] = [
    [{ least: -1, most: 2 }, [-1, 0, 2], [-1.0001, 2.0001]],
    [{ above: -1, below: 2 }, [-0.9999, 0, 1.9999], [-1, 2]],
    [{ least: 0 }, [0, 1e300], [-1e-300]],
    [{ most: 0 }, [0, -1e300], [1e-300]],
    [{}, [0, -1, 1e308], []],
  ];

  test.each(cases)('%o', (permitted, inside, outside) => {
    for (const value of inside) expect(within('x', value, permitted)).toBe(value);
    for (const value of [...outside, Number.NaN, Infinity, -Infinity]) {
      expect(() => within('x', value, permitted)).toThrow(OutOfRange);
    }
  });

  test('makes negative zero zero', () => expect(within('x', -0, {})).toBe(0));
});

describe('OutOfRange', () => {
  test('is a RangeError that carries quantity, value and range', () => {
    const error = new OutOfRange('index', 0.5, { above: 1, most: 3 });
    expect(error).toBeInstanceOf(RangeError);
    expect(error.name).toBe('OutOfRange');
    expect(error).toMatchObject({ quantity: 'index', value: 0.5, permitted: { above: 1, most: 3 } });
    expect(error.message).toBe('index is 0.5, permitted is above 1 and at most 3');
  });

  test.each<[PermittedRange, string]>([
    [{ least: 1 }, 'at least 1'],
    [{ below: 1 }, 'below 1'],
    [{ least: -2, most: 2 }, 'at least -2 and at most 2'],
    [{}, 'any finite number'],
  ])('says %o in words', (permitted, words) => {
    expect(new OutOfRange('x', Number.NaN, permitted).message).toBe(`x is NaN, permitted is ${words}`);
  });
});
