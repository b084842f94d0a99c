import type { Power } from '../../optics/power';
import type { PublishedAnswer } from './answer';

const exact = 1e-9;

export const slabAnswer: PublishedAnswer<{ right: Power; left: Power; drop: number }> = {
  id: '3-14',
  input: { right: sphere(1), left: sphere(4), drop: 10 },
  printed: { imbalance: 3, slabOnRight: 1 },
  tolerance: exact,
  source: 'OT-SLAB',
};

/** Unequal adds in round segments of 22 mm, tops 3 mm below the distance optical centres, read 8 mm below them. */
export const unequalAdds: PublishedAnswer<{ right: Power; left: Power; rightAdd: number; leftAdd: number }> = {
  id: '3-15',
  input: { right: sphere(5), left: sphere(2), rightAdd: 3, leftAdd: 1 },
  printed: {
    distanceImbalance: 2.4,
    aboveSegmentCentre: 6,
    rightDistance: 4,
    rightSegment: -1.8,
    rightTotal: 2.2,
    leftDistance: 1.6,
    leftSegment: -0.6,
    moreBaseUpRight: 1.2,
  },
  tolerance: exact,
  source: 'DT-09D',
  note: 'WRONG IN PRINT: the prose names the net 1.2 base down before the right eye. Its own steps give 2.4 up less 1.2 down, base up.',
};

/** Prism of the segment alone, `above` millimetres above its optical centre. */
export const segmentAnswers: readonly PublishedAnswer<readonly { add: number; above: number }[]>[] = [
  {
    id: '3-16',
    input: [
      { add: 1.5, above: 6 },
      { add: 2, above: 6 },
      { add: 2.5, above: 6 },
    ],
    printed: { 0: -0.9, 1: -1.2, 2: -1.5 },
    tolerance: exact,
    source: 'DT-09E',
  },
  { id: '3-17', input: [{ add: 2.5, above: -4 }], printed: { 0: 1 }, tolerance: exact, source: 'DT-09E' },
  { id: '3-19', input: [{ add: 3, above: 4 }], printed: { 0: -1.2 }, tolerance: exact, source: 'BHO-131' },
];

export const unequalSegments: PublishedAnswer<{ right: number; left: number; add: number; diameter: number }> = {
  id: '3-18',
  input: { right: 1.2, left: 2, add: 3, diameter: 20 },
  printed: { right: 17.34, left: 22.66 },
  tolerance: 0.01,
  source: 'BHO-131',
  note: 'Exactly 17.333 and 22.667; the source works on with the shift rounded to 1.33 mm.',
};

export const jumpAnswers: readonly PublishedAnswer<{ add: number; topToCentre: number }>[] = [
  {
    id: '3-20',
    input: { add: 2, topToCentre: 11 },
    printed: { jump: -2.2 },
    tolerance: exact,
    source: 'DT-13B',
    note: 'Also in opticaltraining.com, ABO, page 10.',
  },
  { id: '3-21', input: { add: 2, topToCentre: 12 }, printed: { jump: -2.4 }, tolerance: exact, source: 'BHO-124' },
  { id: '3-22', input: { add: 2, topToCentre: 5 }, printed: { jump: -1 }, tolerance: exact, source: 'BHO-124' },
];

function sphere(power: number): Power {
  return { sphere: power, cylinder: 0, axis: 180 };
}
