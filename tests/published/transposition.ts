import type { Power } from '../../optics/power';
import type { PublishedAnswer } from './answer';

type Row = PublishedAnswer<Power>;

/** One lens to be written in the other cylinder form. */
export const flatTransposition: readonly Row[] = [
  other('1-01', lens(0, -1.25, 175), lens(-1.25, 1.25, 85)),
  other('1-02', lens(1.25, 2.5, 123), lens(3.75, -2.5, 33)),
  other('1-03', lens(-6.75, -2.5, 13), lens(-9.25, 2.5, 103)),
  other('1-04', lens(0.25, -0.25, 36), lens(0, 0.25, 126)),
  other('1-05', lens(-3.5, 1.25, 150), lens(-2.25, -1.25, 60)),
  other('1-06', lens(-0.25, 0.5, 89), lens(0.25, -0.5, 179)),
];

/** One lens to be written in both cylinder forms. */
export const bothForms: readonly Row[] = [
  both('1-07', lens(-1, -1, 180), lens(-1, -1, 180), lens(-2, 1, 90)),
  both('1-08', lens(0.5, -2, 30), lens(0.5, -2, 30), lens(-1.5, 2, 120)),
  both('1-09', lens(-1, 1, 80), lens(0, -1, 170), lens(-1, 1, 80)),
  both('1-10', lens(-1, 3, 110), lens(2, -3, 20), lens(-1, 3, 110)),
  both('1-11', lens(8.75, -2.25, 5), lens(8.75, -2.25, 5), lens(6.5, 2.25, 95)),
  both('1-12', lens(-16.75, -2, 179), lens(-16.75, -2, 179), lens(-18.75, 2, 89)),
  both('1-13', lens(-16.75, 2, 5), lens(-14.75, -2, 95), lens(-16.75, 2, 5)),
  both('1-14', lens(-0.75, 1, 92), lens(0.25, -1, 2), lens(-0.75, 1, 92)),
  {
    ...both('1-15', lens(-1.625, 1.75, 115), lens(0.12, -1.75, 25), lens(-1.62, 1.75, 115)),
    tolerance: 'eighth',
    note: 'Printed −1.62 and +0.12, which are the eighths −1.625 and +0.125 cut after two digits.',
  },
  both('1-16', lens(0.25, -0.5, 135), lens(0.25, -0.5, 135), lens(-0.25, 0.5, 45)),
  both('1-17', lens(0, -0.5, 58), lens(0, -0.5, 58), lens(-0.5, 0.5, 148)),
];

/** The powers in both principal meridians, the axis meridian first. */
export const opticalCross: readonly Row[] = [
  cross('1-18', lens(5, 1, 135), [135, 5], [45, 6]),
  cross('1-19', lens(-1.25, -3.25, 45), [45, -1.25], [135, -4.5]),
  cross('1-20', lens(3.5, -3.5, 90), [90, 3.5], [180, 0]),
  cross('1-21', lens(0, -1.25, 110), [110, 0], [20, -1.25]),
  cross('1-22', lens(0.5, -1.75, 115), [115, 0.5], [25, -1.25]),
];

const eighthNote = 'Printed cut after two digits; the eighth is meant.';

export const sphericalEquivalents: readonly Row[] = [
  equivalent('1-23', lens(8, -1, 15), 7.5),
  equivalent('1-24', lens(3.5, 1.5, 135), 4.25),
  equivalent('1-25', lens(-0.5, -1.5, 8), -1.25),
  { ...equivalent('1-26', lens(-1.375, 2, 115), -0.37), note: `Sphere printed −1.37. ${eighthNote}` },
  { ...equivalent('1-27', lens(0, 0.75, 10), 0.37), note: eighthNote },
  { ...equivalent('1-28', lens(2.25, -2.25, 136), 1.12), note: eighthNote },
];

/** A lens as printed, with the toric surface wanted on it. */
export const toricTransposition: readonly PublishedAnswer<{ power: Power; base: number }>[] = [
  {
    id: '1-62',
    input: { power: lens(3, -1, 180), base: 6 },
    printed: { sphericalSide: -4, base: 6, baseAxis: 180, cross: 7, crossAxis: 90 },
    tolerance: 1e-9,
    source: 'MRC-10-3',
  },
  {
    id: '1-63',
    input: { power: lens(-2, 1.5, 90), base: -6 },
    printed: { sphericalSide: 5.5, base: -6, baseAxis: 90, cross: -7.5, crossAxis: 180 },
    tolerance: 1e-9,
    source: 'MRC-10-3',
  },
];

function lens(sphere: number, cylinder: number, axis: number): Power {
  return { sphere, cylinder, axis };
}

function other(id: string, input: Power, printed: Power): Row {
  return { id, input, printed: { ...printed }, tolerance: 1e-9, source: 'NFOS-08C' };
}

function both(id: string, input: Power, minus: Power, plus: Power): Row {
  const printed = {
    minusSphere: minus.sphere,
    minusCylinder: minus.cylinder,
    minusAxis: minus.axis,
    plusSphere: plus.sphere,
    plusCylinder: plus.cylinder,
    plusAxis: plus.axis,
  };
  return { id, input, printed, tolerance: 1e-9, source: 'NFOS-08P' };
}

function cross(id: string, input: Power, first: [number, number], second: [number, number]): Row {
  const printed = {
    firstMeridian: first[0],
    firstPower: first[1],
    secondMeridian: second[0],
    secondPower: second[1],
  };
  return { id, input, printed, tolerance: 1e-9, source: 'NFOS-08B' };
}

function equivalent(id: string, input: Power, printed: number): Row {
  return { id, input, printed: { equivalent: printed }, tolerance: 'eighth', source: 'NFOS-09B' };
}
