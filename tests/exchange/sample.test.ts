import { expect, test } from 'vitest';
import { toJson } from '../../exchange';
import { analysisOf } from './support/examples';

// The sample of the documented output. Only what the order itself and the published tables decide is written here by hand.
const file = toJson(analysisOf('examples/quay-lane.lentil'), 'examples/quay-lane.lentil');
const [order] = file.orders;
const measure = (quantity: string, eye: 'R' | 'L' | null) =>
  order?.measures.filter((one) => one.quantity === quantity && one.eye === eye);

test('the sample order is accepted, near the limit', () => {
  expect(file).toMatchObject({ path: 'examples/quay-lane.lentil' });
  expect(file.orders).toHaveLength(1);
  expect(order).toMatchObject({
    name: 'QL-1042',
    verdict: 'accept',
    reservations: ['near-the-limit'],
    standard: 'z80.1-2015',
    decided: null,
  });
});

test('the one finding is the cylinder that this instrument cannot decide', () => {
  expect(file.findings.filter(({ level }) => level === 'error' || level === 'warning')).toMatchObject([
    {
      code: 'near-the-limit',
      level: 'warning',
      order: 'QL-1042',
      eye: 'R',
      range: { start: { line: 24, character: 13 }, end: { line: 24, character: 30 } },
      fixes: [],
    },
  ]);
});

test('the right lens in all its forms', () => {
  expect(order?.lenses.R).toMatchObject({
    ordered: { sphere: -4.5, cylinder: -0.75, axis: 22, add: 2 },
    made: { sphere: -4.5, cylinder: -0.75, axis: 22 },
    minus: { sphere: -4.5, cylinder: -0.75, axis: 22 },
    plus: { sphere: -5.25, cylinder: 0.75, axis: 112 },
    meridians: [
      { meridian: 22, power: -4.5 },
      { meridian: 112, power: -5.25 },
    ],
    sphericalEquivalent: -4.875,
    near: { sphere: -2.5, cylinder: -0.75, axis: 22 },
    // (52 + 18 - 63) / 2
    decentration: { in: 3.5 },
    // 36 / 2 - 17, and (63 - 60) / 2
    segment: { drop: 1, inset: 1.5 },
    // 55 + 2 x 3.5
    blank: 62,
  });
});

test('the left lens too', () => {
  expect(order?.lenses.L).toMatchObject({
    ordered: { sphere: -4.25, cylinder: -1, axis: 168, add: 2 },
    plus: { sphere: -5.25, cylinder: 1, axis: 78 },
    sphericalEquivalent: -4.75,
    near: { sphere: -2.25, cylinder: -1, axis: 168 },
  });
});

test('the reading', () => {
  expect(order?.readings).toMatchObject([
    { date: '2026-11-24', time: '14:30', by: 'KO', with: 'FOC-A', stage: 'final', range: { start: { line: 22 } } },
  ]);
});

test('the axis of the right lens', () => {
  expect(measure('axis', 'R')).toMatchObject([
    {
      ordered: 22,
      read: 24,
      deviation: 2,
      reading: 0,
      limit: 5,
      unit: 'deg',
      outcome: 'pass',
      standard: 'z80.1-2015',
      evidence: 'secondary',
      range: { start: { line: 24, character: 13 } },
    },
  ]);
});

test('the power of the right lens, through the drum: the zero is taken off and .62 is an eighth', () => {
  // -4.50 - 0.03 = -4.53; -4.53 - 0.625 = -5.155 in the meridian ordered at -5.25.
  const [power] = measure('power', 'R') ?? [];
  expect(power).toMatchObject({
    meridian: 1,
    ordered: -5.25,
    read: -5.155,
    deviation: 0.095,
    limit: 0.13,
    unit: 'D',
    outcome: 'pass',
  });
  expect(power?.steps).toContainEqual(expect.objectContaining({ step: 'zero', zero: 0.03, from: -4.5, to: -4.53 }));
  const [cylinder] = measure('cylinder', 'R') ?? [];
  expect(cylinder).toMatchObject({ ordered: -0.75, read: -0.625, deviation: 0.125, outcome: 'pass', tooCoarse: true });
  expect(cylinder?.steps).toContainEqual(expect.objectContaining({ step: 'eighth', from: -0.62, to: -0.625 }));
});

test('the add by difference keeps both drum positions', () => {
  expect(measure('add', 'R')).toMatchObject([
    {
      ordered: 2,
      read: 2,
      deviation: 0,
      limit: 0.12,
      steps: [{ step: 'difference', from: -4.5, to: -2.5, result: 2 }],
    },
  ]);
});

test('the PD in millimetres, with the prism the error makes beside it', () => {
  // The right lens was read -4.53 -0.625 x 024 with the zero taken off: -4.633 D along the horizontal, 0.2317 at 0.5 mm.
  expect(measure('pd', null)).toMatchObject([
    { ordered: 63, read: 63.5, deviation: 0.5, limit: 2.5, unit: 'mm', beside: { amount: 0.2317, unit: 'prism' } },
  ]);
});
