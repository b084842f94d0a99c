import type { PublishedAnswer } from './answer';

/** A tilted sphere; the source writes 3 for twice the index, which is an index of 1.5. */
export const tiltedSpheres: readonly PublishedAnswer<{ sphere: number; tilt: number }>[] = [
  {
    id: '8-01',
    input: { sphere: 15, tilt: 10 },
    printed: { sphere: 15.15, cylinder: 0.47, axis: 180 },
    tolerance: 0.005,
    source: 'DT-TILT',
  },
  {
    id: '8-02',
    input: { sphere: -15, tilt: 10 },
    printed: { sphere: -15.15, cylinder: -0.47, axis: 180 },
    tolerance: 0.005,
    source: 'DT-TILT',
  },
];

export const tiltSteps: PublishedAnswer<{ tilt: number }> = {
  id: '8-03',
  input: { tilt: 10 },
  printed: { gain: 0.01005, tangentSquared: 0.031091 },
  tolerance: 5e-6,
  source: 'DT-TILT',
  note: 'The printed sine 0.173648 and its square 0.03015 lead to the gain; the tangent is printed as 0.176326.',
};

export const centreForTilt: PublishedAnswer<{ tilt: number }> = {
  id: '8-04',
  input: { tilt: 2 },
  printed: { lowerBy: 1 },
  tolerance: 0.1,
  source: 'ATCH',
  note: 'A rule of about 1 mm; the geometry behind it gives 0.94 mm.',
};
