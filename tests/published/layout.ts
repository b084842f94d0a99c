import type { PublishedAnswer } from './answer';

const exact = 1e-9;

export const planoConvex: PublishedAnswer<{ index: number; radius: number; diameter: number; edge: number }> = {
  id: '7-01',
  input: { index: 1.523, radius: 52.3, diameter: 40, edge: 1 },
  printed: { centre: 4.98 },
  tolerance: 0.005,
  source: 'JAL-2305',
};

export const curveVariation: PublishedAnswer<{ index: number; reference: number }> = {
  id: '7-02',
  input: { index: 1.7, reference: 1.523 },
  printed: { factor: 0.75 },
  tolerance: 0.005,
  source: 'JAL-MAT',
  note: 'Exactly 0.747, printed beside "about 25 % thinner".',
};

/** Box width, distance between lenses and binocular pupil distance: decentration of each lens, inwards. */
export const decentrations: readonly PublishedAnswer<{ a: number; dbl: number; pd: number }>[] = [
  { id: '7-03', input: { a: 54, dbl: 16, pd: 62 }, printed: { in: 4 }, tolerance: exact, source: 'HARI' },
  { id: '7-04', input: { a: 42, dbl: 14, pd: 50 }, printed: { in: 3 }, tolerance: exact, source: 'HARI' },
  { id: '7-05', input: { a: 50, dbl: 16, pd: 66 }, printed: { in: 0 }, tolerance: exact, source: 'HARI' },
  { id: '7-06', input: { a: 58, dbl: 22, pd: 64 }, printed: { in: 8 }, tolerance: exact, source: 'HARI' },
];

/** The smallest blank, without a margin for chipping. */
export const blanks: readonly PublishedAnswer<{ a: number; dbl: number; pd: number; ed: number }>[] = [
  { id: '7-07', input: { a: 58, dbl: 18, pd: 68, ed: 60 }, printed: { blank: 68 }, tolerance: exact, source: 'HARI' },
  { id: '7-08', input: { a: 52, dbl: 20, pd: 60, ed: 54 }, printed: { blank: 66 }, tolerance: exact, source: 'HARI' },
  { id: '7-09', input: { a: 56, dbl: 16, pd: 64, ed: 59 }, printed: { blank: 67 }, tolerance: exact, source: 'HARI' },
  { id: '7-10', input: { a: 48, dbl: 14, pd: 50, ed: 50 }, printed: { blank: 62 }, tolerance: exact, source: 'HARI' },
];

/** Box height and segment height: how far the segment top lies below the boxed centre line. */
export const drops: readonly PublishedAnswer<{ b: number; height: number }>[] = [
  { id: '7-11', input: { b: 52, height: 23 }, printed: { below: 3 }, tolerance: exact, source: 'HARI' },
  { id: '7-12', input: { b: 48, height: 24 }, printed: { below: 0 }, tolerance: exact, source: 'HARI' },
  { id: '7-13', input: { b: 50, height: 28 }, printed: { below: -3 }, tolerance: exact, source: 'HARI' },
  { id: '7-14', input: { b: 46, height: 19 }, printed: { below: 4 }, tolerance: exact, source: 'HARI' },
];

export const nearInset: PublishedAnswer<{ workingDistance: number }> = {
  id: '7-15',
  input: { workingDistance: 400 },
  printed: { insetPerLens: 2, nearPdLess: 4 },
  tolerance: 0.5,
  source: 'BHO-134',
  note: 'Whole millimetres; the three-quarter rule gives 1.875, the converging eye 2.02.',
};
