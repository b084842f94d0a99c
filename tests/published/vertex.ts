import type { PublishedAnswer } from './answer';

/** A sphere tested at one vertex distance and worn at another, dioptres and millimetres. */
export const vertexAnswers: readonly PublishedAnswer<{ sphere: number; tested: number; worn: number }>[] = [
  {
    id: '4-01',
    input: { sphere: 5, tested: 12, worn: 0 },
    printed: { power: 5.32 },
    tolerance: 0.005,
    source: 'CLSA',
  },
  {
    id: '4-03',
    input: { sphere: -10, tested: 12, worn: 0 },
    printed: { power: -8.93 },
    tolerance: 0.005,
    source: 'OPENX-3.2',
  },
  {
    id: '4-04',
    input: { sphere: 10, tested: 0, worn: 10 },
    printed: { power: 9 },
    tolerance: 0.5,
    source: 'MRC-IIA',
    note: 'Printed to a whole dioptre; exactly 9.09.',
  },
];

export const squareRule: PublishedAnswer<readonly number[]> = {
  id: '4-02',
  input: [5, 10],
  printed: { 0: 0.25, 1: 1 },
  tolerance: 1e-9,
  source: 'CLSA',
  note: 'A hundredth of the square holds for 10 mm; at 12 mm the exact changes are 0.32, and 1.36 for plus, 1.07 for minus.',
};

export const apart: PublishedAnswer<{ first: number; second: number; separation: number }> = {
  id: '4-05',
  input: { first: 4, second: 4, separation: 100 },
  printed: { vergence: 10.7 },
  tolerance: 0.05,
  source: 'MRC-IIA',
};
