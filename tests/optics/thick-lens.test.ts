import { describe, expect, test } from 'vitest';
import {
  backSurfaceFor,
  backVertexPower,
  equivalentPower,
  frontVertexPower,
  nearEffectivityError,
  nominalPower,
  shapeFactor,
  type ThickLens,
} from '../../optics/thick-lens';
import { vertexPowers } from '../published/thick-lens';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

const lens: ThickLens = { front: 10.25, back: -3, thickness: 4, index: 1.586 };

describe('printed answers', () => {
  checkPublished(vertexPowers, (thick) => ({
    nominal: nominalPower(thick),
    frontVertex: frontVertexPower(thick),
    backVertex: backVertexPower(thick),
  }));
});

describe('thick lenses', () => {
  // Our own figures, from the formulas.
  test('front vertex powers beside the printed back vertex powers', () => {
    expect(frontVertexPower(lens)).toBeCloseTo(7.2725, 4);
    expect(frontVertexPower({ front: 15, back: -6, thickness: 6.5, index: 1.523 })).toBeCloseTo(9.1498, 4);
  });

  test('the question sheet lens read in distance and segment', () => {
    const distance = { front: 8.75, back: -4.75, thickness: 4.1, index: 1.586 };
    const near = { front: 10.5, back: -4.75, thickness: 5.2, index: 1.586 };
    expect([nominalPower, frontVertexPower, backVertexPower].map((power) => power(distance).toFixed(2))).toEqual([
      '4.00',
      '4.06',
      '4.20',
    ]);
    expect([nominalPower, frontVertexPower, backVertexPower].map((power) => power(near).toFixed(2))).toEqual([
      '5.75',
      '5.82',
      '6.12',
    ]);
  });

  test('equivalent power and shape factor make the back vertex power', () => {
    expect(equivalentPower(lens)).toBeCloseTo(7.25 + (0.004 / 1.586) * 30.75, 12);
    expect(equivalentPower(lens) * shapeFactor(lens.front, lens.thickness, lens.index)).toBeCloseTo(
      backVertexPower(lens),
      12,
    );
    expect(shapeFactor(8, 4, 1.498)).toBeCloseTo(1.0218, 4);
  });

  test('a lens without thickness has one power', () => {
    const thin = { ...lens, thickness: 0 };
    for (const power of [backVertexPower, frontVertexPower, equivalentPower, nominalPower])
      expect(power(thin)).toBe(7.25);
    expect(shapeFactor(10, 0, 1.5)).toBe(1);
  });

  test('the back surface found gives the power wanted', () => {
    const back = backSurfaceFor(7.5, 10.25, 4, 1.586);
    expect(backVertexPower({ ...lens, back })).toBeCloseTo(7.5, 12);
  });

  test('a thick steep lens is weaker at near', () => {
    // Index 1.5, +10.00, object at -3.00 D; our own figures.
    const flat = { front: 5, back: backSurfaceFor(10, 5, 7, 1.5), thickness: 7, index: 1.5 };
    const steep = { front: 14, back: backSurfaceFor(10, 14, 9, 1.5), thickness: 9, index: 1.5 };
    expect(nearEffectivityError(flat, -3)).toBeCloseTo(-0.1, 2);
    expect(nearEffectivityError(steep, -3)).toBeCloseTo(-0.51, 2);
    expect(nearEffectivityError(steep, 0)).toBe(0);
    expect(nearEffectivityError({ ...flat, thickness: 0 }, -3)).toBeCloseTo(0, 12);
    refused(() => nearEffectivityError(flat, 0.1), 'object vergence', 0.1);
    refused(() => nearEffectivityError(flat, -20.1), 'object vergence', -20.1);
  });

  test('nothing is negative zero', () => {
    const plano = { front: 0, back: -0, thickness: 0, index: 1.5 };
    for (const power of [backVertexPower, frontVertexPower, equivalentPower, nominalPower])
      expect(power(plano)).toBe(0);
    expect(backSurfaceFor(0, 0, 0, 1.5)).toBe(0);
  });
});

describe('range', () => {
  test.each<[string, Partial<ThickLens>, number]>([
    ['front surface power', { front: 60.1 }, 60.1],
    ['front surface power', { front: -60.1 }, -60.1],
    ['back surface power', { back: 60.1 }, 60.1],
    ['back surface power', { back: Number.NaN }, Number.NaN],
    ['thickness', { thickness: -0.1 }, -0.1],
    ['thickness', { thickness: 50.1 }, 50.1],
    ['index', { index: 1 }, 1],
    ['index', { index: 3.1 }, 3.1],
  ])('%s %o is refused by every function', (quantity, change, value) => {
    const wrong = { ...lens, ...change };
    for (const power of [backVertexPower, frontVertexPower, equivalentPower, nominalPower]) {
      refused(() => power(wrong), quantity, value);
    }
    refused(() => nearEffectivityError(wrong, -1), quantity, value);
    if ('back' in change) return;
    refused(() => shapeFactor(wrong.front, wrong.thickness, wrong.index), quantity, value);
    refused(() => backSurfaceFor(1, wrong.front, wrong.thickness, wrong.index), quantity, value);
  });

  test('the ends themselves are permitted', () => {
    expect(nominalPower({ front: 60, back: -60, thickness: 50, index: 3 })).toBe(0);
    expect(backSurfaceFor(60, 0, 0, 1.5)).toBe(60);
    refused(() => backSurfaceFor(60.1, 0, 0, 1.5), 'back vertex power', 60.1);
    refused(() => backSurfaceFor(-60.1, 0, 0, 1.5), 'back vertex power', -60.1);
  });

  test('a focus inside the lens is refused', () => {
    refused(() => backVertexPower({ front: 40, back: 0, thickness: 50, index: 1.5 }), 'distance × vergence');
    refused(() => shapeFactor(30, 50, 1.5), 'thickness × front power / index', 1);
  });
});
