import type { Power } from '../../optics/power';
import type { Eye, EyePrism } from '../../optics/prism';
import type { PublishedAnswer } from './answer';

const exact = 1e-9;

/** Where the optical centre stands from the place looked through (millimetres, inwards and up), before an eye. */
interface Decentred {
  readonly power: Power;
  readonly eye: Eye;
  readonly centre: EyePrism;
}

/** Prism before the eye, prism dioptres, in and up positive. The sheet names no eye where it is of no account. */
export const prenticeAnswers: readonly PublishedAnswer<Decentred>[] = [
  {
    id: '3-01',
    input: { power: sphere(8.5), eye: 'R', centre: { in: 0, up: 2 } },
    printed: { up: 1.7 },
    tolerance: exact,
    source: 'NFOS-13A',
  },
  {
    id: '3-02',
    input: { power: sphere(-3.25), eye: 'R', centre: { in: -5, up: 0 } },
    printed: { in: 1.6 },
    tolerance: 0.05,
    source: 'NFOS-13A',
    note: 'Exactly 1.625; printed to one digit.',
  },
  {
    id: '3-03',
    input: { power: sphere(7.75), eye: 'R', centre: { in: 0, up: -4 } },
    printed: { up: -3.1 },
    tolerance: exact,
    source: 'NFOS-13A',
  },
  {
    id: '3-04',
    input: { power: { sphere: 5, cylinder: -1.5, axis: 90 }, eye: 'R', centre: { in: 0, up: 8 } },
    printed: { up: 4, in: 0 },
    tolerance: exact,
    source: 'NFOS-13A',
  },
  {
    id: '3-06',
    input: { power: sphere(2), eye: 'L', centre: { in: 10, up: 0 } },
    printed: { in: 2 },
    tolerance: exact,
    source: 'STUDYLIB-P',
  },
  {
    id: '3-07',
    input: { power: sphere(5), eye: 'L', centre: { in: 0, up: 10 } },
    printed: { up: 5 },
    tolerance: exact,
    source: 'MRC-IIA',
  },
];

export const obliquePrentice: readonly PublishedAnswer<Decentred>[] = [
  {
    id: '3-08',
    input: { power: { sphere: 6, cylinder: -3, axis: 140 }, eye: 'R', centre: { in: -2.5, up: 11 } },
    printed: { up: 5.03, in: -2.81 },
    tolerance: 'cut to hundredths',
    source: 'JAL-2411',
    note: 'Exactly 5.0328 and 2.8151; the source cuts, the nearest hundredth would be 2.82.',
  },
  {
    id: '3-09',
    input: { power: { sphere: 3, cylinder: 2, axis: 60 }, eye: 'R', centre: { in: -3.85, up: -6.67 } },
    printed: { up: -2 },
    tolerance: 0.005,
    source: 'JAL-2209',
  },
];

/** The decentration (millimetres, inwards) of each lens for a prism. */
export const decentrationAnswer: PublishedAnswer<{ power: Power; prism: EyePrism }> = {
  id: '3-05',
  input: { power: sphere(4), prism: { in: -2, up: 0 } },
  printed: { in: -5, up: 0 },
  tolerance: exact,
  source: 'MRC-13-7',
};

export const zoneAnswer: PublishedAnswer<{ power: Power; limit: number }> = {
  id: '3-10',
  input: { power: { sphere: 3, cylinder: 2, axis: 60 }, limit: 2 },
  printed: { halfWidth: 5.55, inclination: 13.9 },
  tolerance: { halfWidth: 0.005, inclination: 0.05 },
  source: 'JAL-2209',
};

/** One prism from its parts before an eye. */
export const resultantAnswers: readonly PublishedAnswer<{ prism: EyePrism; eye: Eye }>[] = [
  {
    id: '3-11',
    input: { prism: { in: 2, up: 1.5 }, eye: 'R' },
    printed: { amount: 2.5, base: 37 },
    tolerance: { amount: exact, base: 0.5 },
    source: 'DT-PB-B',
    note: 'The base is printed to a whole degree, the amount is exact.',
  },
  {
    id: '3-12',
    input: { prism: { in: 2, up: -1.5 }, eye: 'L' },
    printed: { amount: 2.5, base: 217 },
    tolerance: { amount: exact, base: 0.5 },
    source: 'DT-PB-A',
    note: 'Also printed as 2.5 base down and in at 037, the half-circle form of 217.',
  },
];

export const splitAnswer: PublishedAnswer<{ prism: EyePrism; eye: Eye }> = {
  id: '3-13',
  input: { prism: { in: 4, up: 3 }, eye: 'R' },
  printed: { rightIn: 2, rightUp: 1.5, leftIn: 2, leftUp: -1.5 },
  tolerance: exact,
  source: 'DT-PB-A',
};

function sphere(power: number): Power {
  return { sphere: power, cylinder: 0, axis: 180 };
}
