import { describe, expect, test } from 'vitest';
import { transverseChromaticAberration } from '../../optics/aberration';
import { crossedCylinders, percentageOfCylinder } from '../../optics/crossed-cylinders';
import { magnificationDifference, powerFactor, spectacleMagnification } from '../../optics/magnification';
import { misfitOfTurn } from '../../optics/outline';
import { minusForm } from '../../optics/power';
import { sum } from '../../optics/power-vector';
import { reflectance } from '../../optics/reflectance';
import { backSurfaceFor } from '../../optics/thick-lens';
import { imageSize } from '../published/magnification';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

describe('magnification', () => {
  checkPublished([imageSize], ({ backVertex, distance }) => ({
    percent: 100 * (powerFactor(backVertex, distance) - 1),
  }));

  // Our own figures, from the formulas.
  test.each([
    [4, 8, 4, 15, 1.0871],
    [-3, 4, 2, 15, 0.9621],
  ])('%d D on a front of %d D', (power, front, thickness, distance, magnification) => {
    const lens = { front, back: backSurfaceFor(power, front, thickness, 1.498), thickness, index: 1.498 };
    expect(spectacleMagnification(lens, distance)).toBeCloseTo(magnification, 4);
  });

  test('power factor alone, and both eyes', () => {
    expect(powerFactor(-11.1111, 10)).toBeCloseTo(0.9, 4);
    expect(powerFactor(60, 0)).toBe(1);
    expect(powerFactor(-60, 100)).toBeCloseTo(1 / 7, 9);
    expect(magnificationDifference(1.05, 1)).toBeCloseTo(5, 9);
    expect(magnificationDifference(10, 10)).toBe(0);
  });

  test('is refused out of range', () => {
    refused(() => powerFactor(20, 50), 'distance × power', 1);
    refused(() => powerFactor(60.1, 1), 'back vertex power', 60.1);
    refused(() => powerFactor(-60.1, 1), 'back vertex power', -60.1);
    refused(() => powerFactor(1, -0.1), 'distance to the entrance pupil', -0.1);
    refused(() => powerFactor(1, 100.1), 'distance to the entrance pupil', 100.1);
    refused(() => magnificationDifference(0, 1), 'right magnification', 0);
    refused(() => magnificationDifference(10.1, 1), 'right magnification', 10.1);
    refused(() => magnificationDifference(1, 0), 'left magnification', 0);
    refused(() => magnificationDifference(1, 10.1), 'left magnification', 10.1);
  });
});

describe('crossed cylinders', () => {
  test.each([
    [0.5, 45, -1, 135],
    [2, 120, -2.25, 30],
    [1, 20, 3, 75],
    [3, 170, 1, 15],
    [-1, 10, -2, 100],
    [-1, 60, 2, 20],
  ])('%d x %d with %d x %d agree with the sum of power vectors', (first, firstAxis, second, secondAxis) => {
    const together = crossedCylinders(first, firstAxis, second, secondAxis);
    const vectors = sum(
      { sphere: 0, cylinder: first, axis: firstAxis },
      { sphere: 0, cylinder: second, axis: secondAxis },
    );
    expect(together.cylinder).toBeGreaterThan(0);
    close(minusForm(together), vectors, 1e-9);
  });

  test('equal cylinders, the worked identity of Jalie 2022: halfway axis, twice the squared sine of half the angle', () => {
    const [power, angle] = [2, 40];
    const { sphere, cylinder, axis } = crossedCylinders(power, 30, power, 30 + angle);
    expect(axis).toBeCloseTo(50, 9);
    expect(sphere).toBeCloseTo(2 * power * Math.sin((angle * Math.PI) / 360) ** 2, 9);
    expect(cylinder).toBeCloseTo(2 * (power - sphere), 9);
  });

  test('cylinders that cancel leave a sphere', () => {
    expect(crossedCylinders(1.5, 30, 1.5, 120)).toEqual({ sphere: 1.5, cylinder: 0, axis: 180 });
    expect(crossedCylinders(1.5, 30, -1.5, 30)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
    refused(() => crossedCylinders(40.1, 30, 1, 30), 'first cylinder', 40.1);
    refused(() => crossedCylinders(1, 30, -40.1, 30), 'second cylinder', -40.1);
    refused(() => crossedCylinders(1, 721, 1, 30), 'axis', 721);
  });

  test('the percentage ends at 0 and 100', () => {
    expect(percentageOfCylinder(0)).toBe(0);
    expect(percentageOfCylinder(90)).toBe(100);
    refused(() => percentageOfCylinder(-0.1), 'angle from the axis', -0.1);
    refused(() => percentageOfCylinder(90.1), 'angle from the axis', 90.1);
  });
});

describe('chromatic aberration and reflection', () => {
  test('5 prism dioptres in a material of Abbe number 30 are 0.17, in one of 58 0.086', () => {
    expect(transverseChromaticAberration(5, 30)).toBeCloseTo(0.1667, 4);
    expect(transverseChromaticAberration(-5, 58)).toBeCloseTo(0.0862, 4);
    expect(transverseChromaticAberration(100, 10)).toBe(10);
    expect(transverseChromaticAberration(-100, 100)).toBe(1);
    refused(() => transverseChromaticAberration(100.1, 30), 'prism', 100.1);
    refused(() => transverseChromaticAberration(-100.1, 30), 'prism', -100.1);
    refused(() => transverseChromaticAberration(1, 9.9), 'Abbe number', 9.9);
    refused(() => transverseChromaticAberration(1, 100.1), 'Abbe number', 100.1);
  });

  test('a surface of index 1.5 throws back 4 %', () => {
    expect(reflectance(1.5)).toBeCloseTo(0.04, 12);
    expect(reflectance(1)).toBe(0);
    expect(reflectance(3)).toBe(0.25);
    refused(() => reflectance(0.99), 'index', 0.99);
    refused(() => reflectance(3.01), 'index', 3.01);
  });
});

// By hand: half of 52 less 36 is 8, and 8 x sin 30 is 4; a round lens turns freely.
test('a shape turned in its rim stands into it by half of A less B times the sine of the turn', () => {
  expect(misfitOfTurn(52, 36, 30)).toBeCloseTo(4, 12);
  expect(misfitOfTurn(36, 52, -30)).toBeCloseTo(4, 12);
  expect(misfitOfTurn(52, 36, 180)).toBeCloseTo(0, 12);
  expect(misfitOfTurn(46, 46, 45)).toBe(0);
  refused(() => misfitOfTurn(4.9, 36, 8), 'a', 4.9);
  refused(() => misfitOfTurn(52, 120.1, 8), 'b', 120.1);
  refused(() => misfitOfTurn(52, 36, 360.1), 'turn', 360.1);
});
