import { describe, expect, test } from 'vitest';
import { percentageOfCylinder } from '../../optics/crossed-cylinders';
import {
  axisDistance,
  byMeridians,
  checkPower,
  fromMeridians,
  minusForm,
  nearPower,
  normalAxis,
  type Power,
  plusForm,
  powerAt,
  principalMeridians,
  sphericalEquivalent,
  transpose,
} from '../../optics/power';
import { firstSheet, otherMeridians, percentages, secondSheet } from '../published/oblique-meridian';
import { bothForms, flatTransposition, opticalCross, sphericalEquivalents } from '../published/transposition';
import { checkPublished } from './support/check-published';
import { refused } from './support/refused';

describe('printed transpositions', () => {
  checkPublished(flatTransposition, (power) => ({ ...transpose(power) }));
  checkPublished(bothForms, (power) => {
    const minus = minusForm(power);
    const plus = plusForm(power);
    return {
      minusSphere: minus.sphere,
      minusCylinder: minus.cylinder,
      minusAxis: minus.axis,
      plusSphere: plus.sphere,
      plusCylinder: plus.cylinder,
      plusAxis: plus.axis,
    };
  });
  checkPublished(opticalCross, (power) => {
    const [first, second] = principalMeridians(power);
    return {
      firstMeridian: first.meridian,
      firstPower: first.power,
      secondMeridian: second.meridian,
      secondPower: second.power,
    };
  });
  checkPublished(sphericalEquivalents, (power) => ({ equivalent: sphericalEquivalent(power) }));
});

describe('printed powers in a meridian', () => {
  const sheet = (power: Power) => ({
    at90: powerAt(power, 90),
    at180: powerAt(power, 180),
    at45: powerAt(power, 45),
    at122: powerAt(power, 122),
  });
  checkPublished(firstSheet, sheet);
  checkPublished(secondSheet, sheet);
  checkPublished(otherMeridians, ({ power, meridian }) => ({ power: powerAt(power, meridian) }));
  checkPublished([percentages], (angles) =>
    Object.fromEntries(angles.map((angle) => [`at${angle}`, percentageOfCylinder(angle)])),
  );
});

describe('axes', () => {
  test.each([
    [0, 180],
    [180, 180],
    [360, 180],
    [-180, 180],
    [1, 1],
    [181, 1],
    [-1, 179],
    [90, 90],
    [359.5, 179.5],
    [-720, 180],
    [720, 180],
    [9e-10, 180],
    [-179.9999999999, 180],
    [-1e-20, 180],
    [2e-9, 2e-9],
  ])('%d is the axis %d', (degrees, axis) => expect(normalAxis(degrees)).toBe(axis));

  test.each([
    [178, 3, 5],
    [3, 178, 5],
    [180, 0, 0],
    [90, 180, 90],
    [45, 136, 89],
    [10, 20, 10],
  ])('axes %d and %d are %d apart', (first, second, apart) => expect(axisDistance(first, second)).toBe(apart));

  test('angles beyond two turns are refused', () => {
    refused(() => normalAxis(720.1), 'axis', 720.1);
    refused(() => normalAxis(-720.1), 'axis', -720.1);
    refused(() => normalAxis(Number.NaN), 'axis', Number.NaN);
    refused(() => axisDistance(1, Infinity), 'axis', Infinity);
  });
});

describe('forms', () => {
  test('a sphere stays a sphere with axis 180 in every form', () => {
    const sphere = { sphere: -2, cylinder: 0, axis: 180 };
    for (const form of [transpose, minusForm, plusForm]) expect(form({ ...sphere, axis: 37 })).toEqual(sphere);
    expect(nearPower({ ...sphere, axis: 37 }, 2)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
  });

  test('zero is never negative', () => {
    const lens = { sphere: -0, cylinder: -0, axis: 90 };
    for (const form of [transpose, minusForm, plusForm])
      expect(form(lens)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
    expect(minusForm({ sphere: -0, cylinder: -1, axis: 5 }).sphere).toBe(0);
    expect(transpose({ sphere: 1, cylinder: -1, axis: 5 }).sphere).toBe(0);
    expect(sphericalEquivalent(lens)).toBe(0);
    expect(powerAt(lens, 20)).toBe(0);
    expect(principalMeridians(lens)).toEqual([
      { meridian: 180, power: 0 },
      { meridian: 90, power: 0 },
    ]);
  });

  test('axis 90 transposes to 180, axis 91 to 1', () => {
    expect(transpose({ sphere: 0, cylinder: 1, axis: 90 }).axis).toBe(180);
    expect(transpose({ sphere: 0, cylinder: 1, axis: 91 }).axis).toBe(1);
    expect(principalMeridians({ sphere: 0, cylinder: 1, axis: 90 })[1].meridian).toBe(180);
    expect(principalMeridians({ sphere: 0, cylinder: 1, axis: 91 })[1].meridian).toBe(1);
  });

  // False options of the examination page mrcophth.com, clinical optics questions 7, and the true forms.
  test('the axis is turned by 90 and not counted back', () => {
    expect(transpose({ sphere: -1.25, cylinder: 0.75, axis: 4 })).toEqual({ sphere: -0.5, cylinder: -0.75, axis: 94 });
    expect(transpose({ sphere: 2, cylinder: -0.5, axis: 60 })).toEqual({ sphere: 1.5, cylinder: 0.5, axis: 150 });
  });

  test('the near power adds to the sphere alone', () => {
    expect(nearPower({ sphere: -4.5, cylinder: -0.75, axis: 22 }, 2)).toEqual({
      sphere: -2.5,
      cylinder: -0.75,
      axis: 22,
    });
    refused(() => nearPower({ sphere: 0, cylinder: 0, axis: 180 }, 40.1), 'add', 40.1);
  });
});

describe('lens from two meridians', () => {
  test('the more plus meridian gives sphere and axis, whichever comes first', () => {
    const lens = { sphere: -4.5, cylinder: -0.75, axis: 22 };
    expect(fromMeridians({ meridian: 22, power: -4.5 }, { meridian: 112, power: -5.25 })).toEqual(lens);
    expect(fromMeridians({ meridian: 112, power: -5.25 }, { meridian: 22, power: -4.5 })).toEqual(lens);
  });

  test('equal powers are a sphere', () => {
    expect(fromMeridians({ meridian: 30, power: 2 }, { meridian: 120, power: 2 })).toEqual({
      sphere: 2,
      cylinder: 0,
      axis: 180,
    });
  });

  test('meridians that are not 90 apart are refused', () => {
    refused(
      () => fromMeridians({ meridian: 22, power: 1 }, { meridian: 113, power: 2 }),
      'angle between meridians',
      89,
      { least: 90, most: 90 },
    );
    refused(() => fromMeridians({ meridian: 22, power: 41 }, { meridian: 112, power: 2 }), 'sphere', 41);
  });
});

describe('range of a lens', () => {
  const lens = { sphere: 0, cylinder: 0, axis: 180 };
  test('both ends are permitted', () => {
    expect(checkPower({ sphere: 40, cylinder: -80, axis: 180 })).toEqual({ sphere: 40, cylinder: -80, axis: 180 });
    expect(checkPower({ sphere: -40, cylinder: 80, axis: 1e-9 }).sphere).toBe(-40);
    const rounded = { sphere: 25.25, cylinder: -65.25 - 1e-14, axis: 1 };
    expect(checkPower(rounded)).toBe(rounded);
    expect(checkPower({ sphere: 40 + 1e-14, cylinder: 0, axis: 1 }).axis).toBe(1);
  });

  test.each([
    ['sphere', { ...lens, sphere: 40.01 }, 40.01],
    ['sphere', { ...lens, sphere: -40.01 }, -40.01],
    ['sphere', { ...lens, sphere: Number.NaN }, Number.NaN],
    ['sphere', { ...lens, sphere: Infinity }, Infinity],
    ['cylinder', { ...lens, cylinder: Number.NaN }, Number.NaN],
    ['cylinder', { ...lens, sphere: 40, cylinder: -80.5 }, -80.5],
    ['cylinder', { ...lens, sphere: -40, cylinder: 80.5 }, 80.5],
    ['sphere + cylinder', { ...lens, sphere: 30, cylinder: 10.5 }, 40.5],
    ['sphere + cylinder', { ...lens, sphere: -30, cylinder: -10.5 }, -40.5],
    ['axis', { ...lens, axis: 0 }, 0],
    ['axis', { ...lens, axis: 180.5 }, 180.5],
    ['axis', { ...lens, axis: Number.NaN }, Number.NaN],
  ] as const)('%s beyond its range is refused by every function', (quantity, power, value) => {
    const all = [
      checkPower,
      transpose,
      minusForm,
      plusForm,
      principalMeridians,
      sphericalEquivalent,
      (wrong: Power) => powerAt(wrong, 90),
      (wrong: Power) => nearPower(wrong, 1),
      (wrong: Power) => byMeridians(wrong, (meridian) => meridian),
    ];
    for (const each of all) refused(() => each(power), quantity, value);
  });
});

test('a rule for each meridian keeps form and axis', () => {
  const twice = (power: number) => 2 * power;
  expect(byMeridians({ sphere: 1, cylinder: 0.5, axis: 20 }, twice)).toEqual({ sphere: 2, cylinder: 1, axis: 20 });
  expect(byMeridians({ sphere: 1, cylinder: 0, axis: 20 }, twice)).toEqual({ sphere: 2, cylinder: 0, axis: 180 });
  expect(byMeridians({ sphere: 1, cylinder: 0.5, axis: 20 }, () => -0)).toEqual({ sphere: 0, cylinder: 0, axis: 180 });
  expect(byMeridians({ sphere: 1, cylinder: -1, axis: 20 }, (power) => -power)).toEqual({
    sphere: -1,
    cylinder: 1,
    axis: 20,
  });
  expect(byMeridians({ sphere: 0, cylinder: -1, axis: 20 }, (power) => -power).sphere).toBe(0);
  expect(byMeridians({ sphere: -0, cylinder: 0, axis: 20 }, (power) => power).sphere).toBe(0);
});
