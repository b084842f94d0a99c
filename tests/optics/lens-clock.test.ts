import { describe, expect, test } from 'vitest';
import { addByClock, dialReading, dialShiftOnSlabLine, surfacePower } from '../../optics/lens-clock';
import { sag, surfacePowerOfRadius } from '../../optics/surfaces';
import { refused } from './support/refused';

describe('lens measure', () => {
  // Our own figures; no printed conversion was found. The next test rebuilds a dial from the sag instead.
  test.each([
    [6, 1.498, 5.64],
    [6, 1.6, 6.79],
    [6, 1.66, 7.47],
    [6, 1.67, 7.58],
    [5, 1.586, 5.53],
  ])('%d D on index %f is %f D', (dial, index, power) => {
    expect(surfacePower(dial, index)).toBeCloseTo(power, 2);
    expect(dialReading(surfacePower(dial, index), index)).toBeCloseTo(dial, 12);
  });

  test.each([1.498, 1.6, 1.74])('a dial is driven by the sag under its pins alone, index %f', (index) => {
    // Three pins 10 mm apart on a surface of radius 70 mm: the dial turns the sag into the power of index 1.530.
    const depth = sag(70, 10);
    const radius = (10 ** 2 + depth ** 2) / (2 * depth);
    const dial = 530 / radius;
    expect(surfacePower(dial, index)).toBeCloseTo(surfacePowerOfRadius(70, index), 9);
    expect(dialReading(surfacePowerOfRadius(70, index), index)).toBeCloseTo(dial, 9);
  });

  test('one dioptre of the dial is a radius of 530 mm', () => {
    expect(dialReading(surfacePowerOfRadius(530, 1.53), 1.53)).toBeCloseTo(1, 12);
  });

  test('the index of the dial is a setting', () => {
    expect(surfacePower(6, 1.523, 1.523)).toBeCloseTo(6, 12);
    expect(surfacePower(6, 1.53, 1.523) / surfacePower(6, 1.53)).toBeCloseTo(0.53 / 0.523, 12);
    expect(dialReading(6, 1.498, 1.523)).toBeCloseTo((6 * 0.523) / 0.498, 12);
  });

  test.each([
    [1.498, 1.88],
    [1.586, 2.21],
    [1.67, 2.53],
  ])('two dioptres of dial on a segment of index %f are an add of %f D', (index, add) => {
    expect(addByClock(6.25, 8.25, index)).toBeCloseTo(add, 2);
    expect(addByClock(6.25, 8.25, index, 1.523)).toBeCloseTo((2 * (index - 1)) / 0.523, 9);
  });

  test('nothing is negative zero', () => {
    expect(surfacePower(-0, 1.5)).toBe(0);
    expect(dialReading(-0, 1.5)).toBe(0);
    expect(addByClock(6, 6, 1.5)).toBe(0);
  });

  test('a slab line moves the dial by the prism when the pins are 10 mm apart and the index 1.53', () => {
    expect(dialShiftOnSlabLine(3, 1.53, 10)).toBeCloseTo(3, 12);
    // Two planes meeting at the angle of the wedge: the middle pin stands half of that angle times the span above the others.
    const angle = 3 / 100 / (1.6 - 1);
    const depth = (9 * angle) / 2;
    expect(dialShiftOnSlabLine(3, 1.6, 9)).toBeCloseTo((2 * 530 * depth) / 9 ** 2, 9);
    expect(dialShiftOnSlabLine(3, 1.6, 9, 1.523)).toBeCloseTo((2 * 523 * depth) / 9 ** 2, 9);
  });

  test('values outside their range are refused', () => {
    refused(() => surfacePower(60.1, 1.5), 'dial reading', 60.1);
    refused(() => surfacePower(-60.1, 1.5), 'dial reading', -60.1);
    refused(() => surfacePower(6, 1), 'index', 1);
    refused(() => surfacePower(6, 1.5, 3.1), 'index', 3.1);
    refused(() => dialReading(60.1, 1.5), 'surface power', 60.1);
    refused(() => dialReading(6, 3.1), 'index', 3.1);
    refused(() => addByClock(6, Number.NaN, 1.5), 'dial reading');
    refused(() => dialShiftOnSlabLine(20.1, 1.5, 10), 'prism', 20.1);
    refused(() => dialShiftOnSlabLine(-20.1, 1.5, 10), 'prism', -20.1);
    refused(() => dialShiftOnSlabLine(1, 1.5, 0.9), 'half span', 0.9);
    refused(() => dialShiftOnSlabLine(1, 1.5, 30.1), 'half span', 30.1);
    refused(() => dialShiftOnSlabLine(1, 1, 10), 'index', 1);
    expect(dialShiftOnSlabLine(20, 1.53, 1)).toBeCloseTo(200, 9);
    expect(dialShiftOnSlabLine(-20, 1.53, 30)).toBeCloseTo(-20 / 3, 9);
  });
});
