import { describe, expect, test } from 'vitest';
import {
  componentsFromBase,
  type EyePrism,
  prentice,
  prismBeforeEye,
  prismInFrame,
  resultant,
} from '../../optics/prism';
import { decentrationForPrism, verticalPrismZone } from '../../optics/prism-decentration';
import { imbalance, splitPrism } from '../../optics/prism-pair';
import {
  decentrationAnswer,
  obliquePrentice,
  prenticeAnswers,
  resultantAnswers,
  splitAnswer,
  zoneAnswer,
} from '../published/prism';
import { checkPublished } from './support/check-published';
import { close } from './support/close';
import { refused } from './support/refused';

describe('printed answers', () => {
  checkPublished([...prenticeAnswers, ...obliquePrentice], ({ power, eye, centre }) => ({
    ...prismBeforeEye(prentice(power, prismInFrame(centre, eye)), eye),
  }));
  for (const eye of ['R', 'L'] as const) {
    checkPublished([decentrationAnswer], ({ power, prism }) => ({
      ...prismBeforeEye(decentrationForPrism(power, prismInFrame(prism, eye)), eye),
    }));
  }
  checkPublished([zoneAnswer], ({ power, limit }) => verticalPrismZone(power, limit));
  checkPublished(resultantAnswers, ({ prism, eye }) => resultant(prismInFrame(prism, eye)));
  checkPublished([splitAnswer], ({ prism, eye }) => {
    const { R, L } = splitPrism(prismInFrame(prism, eye), eye);
    const [right, left] = [prismBeforeEye(R, 'R'), prismBeforeEye(L, 'L')];
    return { rightIn: right.in, rightUp: right.up, leftIn: left.in, leftUp: left.up };
  });
});

describe('base notation', () => {
  // Durham Technical Community College, OPH 142, prism base notation; ISO 8429.
  test.each<['R' | 'L', number, EyePrism]>([
    ['R', 0, { in: 1, up: 0 }],
    ['R', 90, { in: 0, up: 1 }],
    ['R', 180, { in: -1, up: 0 }],
    ['R', 270, { in: 0, up: -1 }],
    ['L', 0, { in: -1, up: 0 }],
    ['L', 90, { in: 0, up: 1 }],
    ['L', 180, { in: 1, up: 0 }],
    ['L', 270, { in: 0, up: -1 }],
  ])('%s at %d', (eye, base, prism) => {
    close(prismBeforeEye(componentsFromBase(1, base), eye), prism, 1e-12);
    expect(resultant(prismInFrame(prism, eye)).base).toBeCloseTo(base, 9);
  });

  test.each([0, 1, 89, 90, 137, 180, 181, 270, 359.5])('a base at %d comes back', (base) => {
    close(resultant(componentsFromBase(2.5, base)), { amount: 2.5, base }, 1e-9);
  });

  test('no prism has base 0, and a base a hair below 0 is not 360', () => {
    expect(resultant({ right: 0, up: 0 })).toEqual({ amount: 0, base: 0 });
    expect(resultant({ right: 1, up: -1e-20 }).base).toBeLessThan(360);
  });

  test('nothing is negative zero', () => {
    expect(prismBeforeEye({ right: 0, up: -0 }, 'L')).toEqual({ in: 0, up: 0 });
    expect(prismInFrame({ in: 0, up: -0 }, 'L')).toEqual({ right: 0, up: 0 });
    expect(prentice({ sphere: -2, cylinder: 0, axis: 180 }, { right: 0, up: 0 })).toEqual({ right: 0, up: 0 });
    const plano = { sphere: 0, cylinder: 0, axis: 180 };
    expect(prentice(plano, { right: -1, up: -1 })).toEqual({ right: 0, up: 0 });
    expect(componentsFromBase(0, 225)).toEqual({ right: 0, up: 0 });
    expect(splitPrism({ right: -1, up: -1 }, 'R', 0).R).toEqual({ right: 0, up: 0 });
    expect(splitPrism({ right: 1, up: 1 }, 'R', 1).L).toEqual({ right: 0, up: 0 });
    expect(imbalance({ right: 0, up: 0 }, { right: 0, up: 0 })).toEqual({ horizontal: 0, vertical: 0 });
    expect(splitPrism({ right: 0, up: 0 }, 'R')).toEqual({ R: { right: 0, up: 0 }, L: { right: 0, up: 0 } });
  });

  test('values outside their range are refused', () => {
    refused(() => componentsFromBase(-0.1, 0), 'prism', -0.1);
    refused(() => componentsFromBase(100.1, 0), 'prism', 100.1);
    refused(() => componentsFromBase(1, 360.1), 'base', 360.1);
    refused(() => componentsFromBase(1, -0.1), 'base', -0.1);
    refused(() => resultant({ right: 100.1, up: 0 }), 'horizontal prism', 100.1);
    refused(() => resultant({ right: 0, up: -100.1 }), 'vertical prism', -100.1);
    refused(() => prismBeforeEye({ right: Number.NaN, up: 0 }, 'R'), 'horizontal prism');
    refused(() => prismBeforeEye({ right: 0, up: Number.NaN }, 'R'), 'vertical prism');
    refused(() => prismInFrame({ in: 101, up: 0 }, 'R'), 'horizontal prism', 101);
    refused(() => prismInFrame({ in: 0, up: 101 }, 'R'), 'vertical prism', 101);
  });
});

describe('prism off a principal meridian', () => {
  // Our own cases: a scalar reading of the meridian power gives a wrong answer in each of them.
  test('a lens without power at 90 and 180 gives horizontal prism from a vertical shift', () => {
    close(prentice({ sphere: 2, cylinder: -4, axis: 135 }, { right: 0, up: 5 }), { right: -1, up: 0 }, 1e-12);
  });

  test('axis 180 carries sphere and cylinder at 90', () => {
    close(prentice({ sphere: 3, cylinder: -1, axis: 180 }, { right: 0, up: 4 }), { right: 0, up: 0.8 }, 1e-12);
  });

  test('the oblique case 3-08 as one prism', () => {
    const prism = prentice({ sphere: 6, cylinder: -3, axis: 140 }, { right: -2.5, up: 11 });
    close(resultant(prism), { amount: 5.7667, base: 119.22 }, 0.01);
  });

  test('displacements beyond 100 mm are refused', () => {
    const lens = { sphere: 1, cylinder: 0, axis: 180 };
    expect(prentice(lens, { right: 100, up: -100 })).toEqual({ right: 10, up: -10 });
    refused(() => prentice(lens, { right: 100.1, up: 0 }), 'displacement to the right', 100.1);
    refused(() => prentice(lens, { right: 0, up: -100.1 }), 'displacement upwards', -100.1);
    refused(() => prentice({ ...lens, sphere: 41 }, { right: 0, up: 0 }), 'sphere', 41);
  });
});

describe('decentration for a prism', () => {
  const cylinder = { sphere: 0, cylinder: -2, axis: 30 };

  test('a plano cylinder gives prism along its powered meridian only', () => {
    const along = componentsFromBase(1, 120);
    const shift = decentrationForPrism(cylinder, along);
    close(prentice(cylinder, shift), along, 1e-12);
    expect(Math.hypot(shift.right, shift.up)).toBeCloseTo(5, 9);
    refused(() => decentrationForPrism(cylinder, componentsFromBase(1, 30)), 'prism along the plano meridian');
    refused(() => decentrationForPrism(cylinder, { right: 0, up: 1 }), 'prism along the plano meridian');
  });

  test('the plano meridian may be the one across the axis', () => {
    const lens = { sphere: 2, cylinder: -2, axis: 180 };
    close(decentrationForPrism(lens, { right: 1, up: 0 }), { right: 5, up: 0 }, 1e-12);
    refused(() => decentrationForPrism(lens, { right: 1, up: 0.5 }), 'prism along the plano meridian');
  });

  test('a plano lens gives no prism and needs none', () => {
    const plano = { sphere: 0, cylinder: 0, axis: 180 };
    expect(decentrationForPrism(plano, { right: 0, up: 0 })).toEqual({ right: 0, up: 0 });
    const none = { least: 0, most: 0 };
    refused(() => decentrationForPrism(plano, { right: 0.5, up: 0 }), 'prism along the plano meridian', -0.5, none);
    refused(() => decentrationForPrism(plano, { right: 0, up: -0.5 }), 'prism along the plano meridian');
  });

  test('decentrations beyond 100 mm and wild values are refused', () => {
    const weak = { sphere: 0.25, cylinder: 0, axis: 180 };
    refused(() => decentrationForPrism(weak, { right: 3, up: 0 }), 'decentration', 120);
    refused(() => decentrationForPrism(weak, { right: 0, up: -3 }), 'decentration', -120);
    refused(() => decentrationForPrism(weak, { right: Number.NaN, up: 0 }), 'horizontal prism');
    refused(() => decentrationForPrism(weak, { right: 0, up: 101 }), 'vertical prism', 101);
  });
});

describe('zone of little vertical prism', () => {
  test('is level and as wide as the power says for a sphere, of either sign', () => {
    expect(verticalPrismZone({ sphere: 4, cylinder: 0, axis: 90 }, 1)).toEqual({ halfWidth: 2.5, inclination: 0 });
    close(verticalPrismZone({ sphere: -4, cylinder: 0, axis: 180 }, 1), { halfWidth: 2.5, inclination: 0 }, 1e-9);
  });

  test.each([
    { sphere: 3, cylinder: 2, axis: 60 },
    { sphere: -3, cylinder: -2, axis: 60 },
    { sphere: -3, cylinder: -2, axis: 130 },
    { sphere: 1, cylinder: -4, axis: 20 },
    { sphere: 1, cylinder: -4, axis: 160 },
  ])('gives no vertical prism along it and the limit at its rim: %o', (power) => {
    const { halfWidth, inclination } = verticalPrismZone(power, 1.5);
    expect(Math.abs(inclination)).toBeLessThanOrEqual(90);
    const [x, y] = [Math.cos((inclination * Math.PI) / 180), Math.sin((inclination * Math.PI) / 180)];
    expect(prentice(power, { right: 9 * x, up: 9 * y }).up).toBeCloseTo(0, 9);
    expect(Math.abs(prentice(power, { right: -halfWidth * y, up: halfWidth * x }).up)).toBeCloseTo(1.5, 9);
  });

  test('a lens without vertical prism has no zone', () => {
    refused(() => verticalPrismZone({ sphere: 0, cylinder: 2, axis: 90 }, 1), 'vertical prism per centimetre');
    refused(() => verticalPrismZone({ sphere: 1, cylinder: 2, axis: 90 }, 0), 'vertical prism', 0);
    refused(() => verticalPrismZone({ sphere: 1, cylinder: 2, axis: 90 }, 101), 'vertical prism', 101);
  });
});

describe('two eyes', () => {
  test('bases of one name add horizontally and cancel vertically', () => {
    const right = prismInFrame({ in: 2, up: 5 }, 'R');
    const left = prismInFrame({ in: 1, up: -1 }, 'L');
    expect(imbalance(right, left)).toEqual({ horizontal: 3, vertical: 6 });
    expect(imbalance(prismInFrame({ in: 2, up: 1 }, 'R'), prismInFrame({ in: -2, up: 1 }, 'L'))).toEqual({
      horizontal: 0,
      vertical: 0,
    });
    refused(() => imbalance({ right: 101, up: 0 }, left), 'prism', 101);
    refused(() => imbalance(right, { right: 0, up: -101 }), 'prism', -101);
  });

  test('sharing leaves the imbalance as it was', () => {
    const whole = prismInFrame({ in: 4, up: 3 }, 'L');
    const none = { right: 0, up: 0 };
    for (const share of [0, 0.25, 0.5, 1]) {
      const { R, L } = splitPrism(whole, 'L', share);
      expect(imbalance(R, L)).toEqual(imbalance(none, whole));
      expect(L.up).toBe(3 * share);
    }
    refused(() => splitPrism(whole, 'L', 1.1), 'share', 1.1);
    refused(() => splitPrism(whole, 'L', -0.1), 'share', -0.1);
    refused(() => splitPrism({ right: 101, up: 0 }, 'R'), 'horizontal prism', 101);
    refused(() => splitPrism({ right: 0, up: 101 }, 'R'), 'vertical prism', 101);
  });
});
