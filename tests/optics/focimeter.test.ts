import { describe, expect, test } from 'vitest';
import {
  addByDrum,
  addErrorOnOtherSurface,
  correctedForZero,
  expectedDrum,
  powerFromDrum,
  targetDisplacement,
} from '../../optics/focimeter';
import { backVertexPower, frontVertexPower } from '../../optics/thick-lens';
import { focimeterLimits } from '../../tables/focimeters';
import { ordinaryError } from '../published/focimeter';
import { vertexPowers } from '../published/thick-lens';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([ordinaryError], (powers) => {
    const limits = powers.map((power) => focimeterLimits.vertexPower.find(({ band }) => inside(band, Math.abs(power))));
    return { error: Math.max(...limits.map((row) => row?.limit ?? Number.NaN)) };
  });

  // The printed lenses again, as a focimeter would show them on either side.
  const withBothSides = vertexPowers.filter((answer) => 'frontVertex' in answer.printed);
  checkPublished(withBothSides, (lens) => {
    const power = { sphere: backVertexPower(lens), cylinder: 0, axis: 180 };
    return {
      nominal: lens.front + lens.back,
      frontVertex: expectedDrum(power, lens, 'front').thin,
      backVertex: expectedDrum(power, lens, 'back').thin,
    };
  });
});

describe('readings', () => {
  // Our own cases; no worked reading from an allowed source was found.
  test('thin lines give the sphere, wide lines the cylinder, the wheel the axis', () => {
    expect(powerFromDrum(2, -1, 90)).toEqual({ sphere: 2, cylinder: -3, axis: 90 });
    expect(powerFromDrum(-4.25, -5.25, 168)).toEqual({ sphere: -4.25, cylinder: -1, axis: 168 });
    expect(powerFromDrum(-5.25, -4.25, 0)).toEqual({ sphere: -5.25, cylinder: 1, axis: 180 });
    expect(powerFromDrum(2, 2, 35)).toEqual({ sphere: 2, cylinder: 0, axis: 180 });
    expect(powerFromDrum(-0, 0, 35)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
    refused(() => powerFromDrum(40.1, 0, 1), 'drum position of the thin lines', 40.1);
    refused(() => powerFromDrum(0, -40.1, 1), 'drum position of the wide lines', -40.1);
  });

  test('an add is a difference, so that a zero error drops out', () => {
    expect(addByDrum(-3, -0.5)).toBe(2.5);
    expect(addByDrum(-3 + 0.125, -0.5 + 0.125)).toBe(2.5);
    expect(addByDrum(1, 1)).toBe(0);
    refused(() => addByDrum(41, 0), 'drum position in the distance', 41);
    refused(() => addByDrum(0, 41), 'drum position in the segment', 41);
  });

  test('the zero error is taken off absolute positions', () => {
    expect(correctedForZero(-4.5, 0.03)).toBeCloseTo(-4.53, 12);
    expect(correctedForZero(0.5, 0.5)).toBe(0);
    expect(correctedForZero(40, -5)).toBe(45);
    expect(correctedForZero(-40, 5)).toBe(-45);
    refused(() => correctedForZero(40.1, 0), 'drum position', 40.1);
    refused(() => correctedForZero(0, 5.1), 'zero error', 5.1);
    refused(() => correctedForZero(0, -5.1), 'zero error', -5.1);
  });
});

describe('what to expect on the drum', () => {
  const body = { front: 9.5, thickness: 5.7, index: 1.498 };
  const power = { sphere: 6, cylinder: 1.5, axis: 20 };

  test('with the back on the stop the power itself, in minus-cylinder technique', () => {
    expect(expectedDrum(power, body, 'back')).toEqual({ thin: 7.5, wide: 6, wheel: 110 });
    expect(expectedDrum({ sphere: 0, cylinder: 0, axis: 180 }, body, 'back')).toEqual({ thin: 0, wide: 0, wheel: 180 });
  });

  test('with the front on the stop the front vertex powers, mirrored', () => {
    const shown = expectedDrum(power, body, 'front');
    const front = (backVertex: number) => {
      const back = backVertex - body.front / (1 - (0.0057 / 1.498) * body.front);
      return frontVertexPower({ ...body, back });
    };
    close(shown, { thin: front(7.5), wide: front(6), wheel: 70 }, 1e-9);
    expect(expectedDrum({ sphere: -1, cylinder: -1, axis: 180 }, body, 'front').wheel).toBe(180);
    expect(expectedDrum({ sphere: -1, cylinder: -1, axis: 10 }, body, 'front').wheel).toBe(170);
  });

  test('a lens without thickness reads alike from both sides', () => {
    const flat = { ...body, thickness: 0 };
    const sphere = { sphere: 6, cylinder: 0, axis: 180 };
    close(expectedDrum(sphere, flat, 'front'), expectedDrum(sphere, flat, 'back'), 1e-12);
  });

  test('values outside their range are refused', () => {
    refused(() => expectedDrum({ ...power, axis: 0 }, body, 'front'), 'axis', 0);
    refused(() => expectedDrum({ ...power, axis: 0 }, body, 'back'), 'axis', 0);
    refused(() => expectedDrum(power, { ...body, front: 61 }, 'front'), 'front surface power', 61);
    refused(() => expectedDrum(power, { ...body, index: 1 }, 'front'), 'index', 1);
    refused(() => expectedDrum(power, { ...body, thickness: -1 }, 'front'), 'thickness', -1);
  });
});

describe('an add with the wrong surface on the stop', () => {
  test.each([
    // Question sheet of the opticianry course OPT11 with one thickness, and an aphakic lens: our own figures.
    [14, 3, 9, 1.498, 0.65],
    [8.75, 1.75, 4.1, 1.586, 0.09],
    [-4, 2, 1.5, 1.5, -0.01],
  ])('surface %d, add %d, %d mm, index %f: reads %f D too high', (surface, add, thickness, index, error) => {
    expect(addErrorOnOtherSurface(surface, add, thickness, index)).toBeCloseTo(error, 2);
    const lens = { front: surface, back: -3, thickness, index };
    const read = backVertexPower({ ...lens, front: surface + add }) - backVertexPower(lens);
    expect(addErrorOnOtherSurface(surface, add, thickness, index)).toBeCloseTo(read - add, 12);
    const right = frontVertexPower({ ...lens, front: surface + add }) - frontVertexPower(lens);
    expect(right).toBeCloseTo(add, 12);
  });

  test('is nothing without add or thickness, and refused out of range', () => {
    expect(addErrorOnOtherSurface(6, 0, 5, 1.5)).toBe(0);
    expect(addErrorOnOtherSurface(6, 2, 0, 1.5)).toBe(0);
    refused(() => addErrorOnOtherSurface(60.1, 1, 1, 1.5), 'surface power', 60.1);
    refused(() => addErrorOnOtherSurface(6, 40.1, 1, 1.5), 'add', 40.1);
    refused(() => addErrorOnOtherSurface(6, 1, -1, 1.5), 'thickness', -1);
    refused(() => addErrorOnOtherSurface(6, 1, 50.1, 1.5), 'thickness', 50.1);
    refused(() => addErrorOnOtherSurface(6, 1, 1, 0.9), 'index', 0.9);
  });
});

describe('target', () => {
  test.each([
    [1, 20, 2.5],
    [1, 25, 1.6],
    [-8, 20, -20],
    [0, 20, 0],
  ])('%d D with a standard lens of %d D: %f mm', (power, standard, moved) => {
    expect(targetDisplacement(power, standard)).toBeCloseTo(moved, 12);
  });

  test('is refused out of range', () => {
    expect(targetDisplacement(-0, 20)).toBe(0);
    expect(targetDisplacement(40, 5)).toBe(1600);
    expect(targetDisplacement(-40, 60)).toBeCloseTo(-11.11, 2);
    refused(() => targetDisplacement(40.1, 20), 'power', 40.1);
    refused(() => targetDisplacement(1, 4.9), 'standard lens', 4.9);
    refused(() => targetDisplacement(1, 60.1), 'standard lens', 60.1);
  });
});

function inside(
  band: { readonly atLeast?: number; readonly above?: number; readonly atMost?: number; readonly below?: number },
  value: number,
): boolean {
  return (
    value >= (band.atLeast ?? -Infinity) &&
    value > (band.above ?? -Infinity) &&
    value <= (band.atMost ?? Infinity) &&
    value < (band.below ?? Infinity)
  );
}
