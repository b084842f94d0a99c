import { describe, expect, test } from 'vitest';
import type { Power } from '../../optics/power';
import { vergenceAfter } from '../../optics/vergence';
import {
  approximateVertexChange,
  effectivePower,
  nearPowerForVertex,
  powerForVertex,
  separatedLenses,
} from '../../optics/vertex';
import { apart, squareRule, vertexAnswers } from '../published/vertex';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished(vertexAnswers, ({ sphere, tested, worn }) => ({
    power: powerForVertex(sphereOf(sphere), tested, worn).sphere,
  }));
  checkPublished([squareRule], (powers) => ({ ...powers.map((power) => approximateVertexChange(power, 10)) }));
  checkPublished([apart], ({ first, second, separation }) => ({
    vergence: separatedLenses(first, second, separation),
  }));
});

describe('power to order at another vertex distance', () => {
  // Our own figures, from the formula; no printed sphero-cylinder was found.
  test.each<[Power, number, number, Power]>([
    [sphereOf(-12), 10, 14, sphereOf(-12.605)],
    [sphereOf(13), 8, 12, sphereOf(12.3574)],
    [sphereOf(13), 12, 0, sphereOf(15.4028)],
    [sphereOf(-11.1111), 10, 0, sphereOf(-10)],
    [{ sphere: -8, cylinder: -2, axis: 15 }, 12, 0, { sphere: -7.2993, cylinder: -1.6293, axis: 15 }],
    [{ sphere: -10, cylinder: 2, axis: 105 }, 12, 0, { sphere: -8.9286, cylinder: 1.6293, axis: 105 }],
  ])('%o from %d to %d', (power, tested, worn, ordered) => {
    close(powerForVertex(power, tested, worn), ordered, 5e-5);
  });

  test('stays as it is without a move', () => {
    const power = { sphere: -8, cylinder: -2, axis: 15 };
    close(powerForVertex(power, 12, 12), power, 1e-12);
    expect(powerForVertex({ sphere: 0, cylinder: 0, axis: 180 }, 12, 0)).toEqual(sphereOf(0));
  });

  test('is refused out of range', () => {
    const power = sphereOf(20);
    expect(powerForVertex(power, 50, 1).sphere).toBeCloseTo(1000, 6);
    refused(() => powerForVertex(power, 50, 0), 'distance × vergence', 1);
    refused(() => powerForVertex(power, 50.1, 0), 'tested vertex distance', 50.1);
    refused(() => powerForVertex(power, 0, 50.1), 'worn vertex distance', 50.1);
    refused(() => powerForVertex(power, -0.1, 0), 'tested vertex distance', -0.1);
    refused(() => powerForVertex(power, 0, -0.1), 'worn vertex distance', -0.1);
    refused(() => powerForVertex(sphereOf(40.1), 1, 1), 'sphere', 40.1);
  });
});

describe('effective power of the same lens', () => {
  test.each([
    [10, 5, 10.5263],
    [10, -5, 9.5238],
    [-10, -5, -10.5263],
    [-10, 5, -9.5238],
  ])('of %d D moved away by %d mm', (power, away, effective) => {
    expect(effectivePower(sphereOf(power), away).sphere).toBeCloseTo(effective, 4);
  });

  test('goes the opposite way to the power to order', () => {
    const lens = { sphere: 6, cylinder: -2, axis: 30 };
    close(effectivePower(powerForVertex(lens, 12, 16), 4), lens, 1e-9);
    refused(() => effectivePower(lens, 50.1), 'distance moved', 50.1);
    refused(() => effectivePower(lens, -50.1), 'distance moved', -50.1);
  });
});

describe('near power at another vertex distance', () => {
  test('sends the same vergence to the cornea', () => {
    const [power, tested, worn, object] = [12, 10, 15, 400];
    const ordered = nearPowerForVertex(sphereOf(power), tested, worn, object).sphere;
    const atCornea = (lens: number, vertex: number) => vergenceAfter(lens - 1000 / (object - vertex), vertex);
    expect(atCornea(ordered, worn)).toBeCloseTo(atCornea(power, tested), 9);
    // By hand: L1 = -1000/390, leaving +9.4359, 5 mm on +9.0108, and +2.5974 for the new object distance.
    expect(ordered).toBeCloseTo(11.6082, 3);
  });

  test('works by meridians and for a far object becomes the distance power', () => {
    const lens = { sphere: 12, cylinder: -2, axis: 10 };
    const near = nearPowerForVertex(lens, 10, 15, 400);
    expect(near.sphere + near.cylinder).toBeCloseTo(nearPowerForVertex(sphereOf(10), 10, 15, 400).sphere, 9);
    expect(near.axis).toBe(10);
    close(nearPowerForVertex(lens, 10, 15, 10000), powerForVertex(lens, 10, 15), 0.02);
  });

  test('is refused out of range', () => {
    refused(() => nearPowerForVertex(sphereOf(1), 10, 15, 59.9), 'object distance', 59.9);
    refused(() => nearPowerForVertex(sphereOf(1), 10, 15, 10000.1), 'object distance', 10000.1);
    refused(() => nearPowerForVertex(sphereOf(1), 51, 15, 400), 'tested vertex distance', 51);
    refused(() => nearPowerForVertex(sphereOf(1), 10, 51, 400), 'worn vertex distance', 51);
  });
});

describe('rules and pairs', () => {
  test('the square rule has the sign of the move', () => {
    expect(approximateVertexChange(13, -4)).toBeCloseTo(-0.676, 9);
    expect(approximateVertexChange(-10, 12)).toBeCloseTo(1.2, 9);
    expect(approximateVertexChange(0, -1)).toBe(0);
    refused(() => approximateVertexChange(41, 1), 'power', 41);
    refused(() => approximateVertexChange(1, 51), 'distance moved', 51);
    refused(() => approximateVertexChange(1, -51), 'distance moved', -51);
  });

  test('two lenses', () => {
    expect(separatedLenses(4, -2, 0)).toBe(2);
    refused(() => separatedLenses(4, 4, 250), 'distance × vergence', 1);
    refused(() => separatedLenses(4, 4, -1), 'separation', -1);
    refused(() => separatedLenses(0, 4, 1001), 'separation', 1001);
    refused(() => separatedLenses(41, 4, 1), 'first power', 41);
    refused(() => separatedLenses(4, -41, 1), 'second power', -41);
  });

  test('vergence in a medium', () => {
    expect(vergenceAfter(10, 15, 1.5)).toBeCloseTo(10 / 0.9, 12);
    expect(vergenceAfter(-0, 15)).toBe(0);
    expect(vergenceAfter(200, -1000)).toBeCloseTo(200 / 201, 12);
    expect(vergenceAfter(-200, 1000, 3)).toBeCloseTo(-200 / (1 + 200 / 3), 12);
    refused(() => vergenceAfter(201, 0), 'vergence', 201);
    refused(() => vergenceAfter(-201, 0), 'vergence', -201);
    refused(() => vergenceAfter(0, 1000.1), 'distance', 1000.1);
    refused(() => vergenceAfter(0, -1000.1), 'distance', -1000.1);
    refused(() => vergenceAfter(0, 1, 0.99), 'index', 0.99);
    refused(() => vergenceAfter(0, 1, 3.01), 'index', 3.01);
  });
});

function sphereOf(sphere: number): Power {
  return { sphere, cylinder: 0, axis: 180 };
}
