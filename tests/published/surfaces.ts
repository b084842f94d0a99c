import type { PublishedAnswer } from './answer';

export const exactSag: PublishedAnswer<{ radius: number; halfAperture: number }> = {
  id: '6-01',
  input: { radius: 52.3, halfAperture: 20 },
  printed: { sag: 3.98 },
  tolerance: 0.005,
  source: 'JAL-2305',
};

export const roughSag: PublishedAnswer<{ power: number; index: number; halfAperture: number }> = {
  id: '6-02',
  input: { power: 6, index: 1.53, halfAperture: 25 },
  printed: { radius: 88.3, sag: 3.5 },
  tolerance: 0.05,
  source: 'OPENX-3.2',
  note: 'Printed as about 3.5; the approximate formula gives 3.538, the exact one 3.612.',
};

export const edgeOfLens: PublishedAnswer<{ front: number; back: number; halfAperture: number; centre: number }> = {
  id: '6-03',
  input: { front: 0.0104227, back: -0.0406946, halfAperture: 9, centre: 3.0486 },
  printed: { edge: 0.918096 },
  tolerance: 5e-7,
  source: 'LOOMIS',
  note: 'Not a spectacle lens: both curvatures by the sign rule of optical design, per millimetre.',
};

/** Index and radius (millimetres) of each surface, and its power to two digits. */
export const surfacePowers: readonly PublishedAnswer<readonly { index: number; radius: number }[]>[] = [
  {
    id: '6-04',
    input: [
      { index: 1.523, radius: 209 },
      { index: 1.523, radius: -68 },
      { index: 1.53, radius: 84 },
      { index: 1.7, radius: -84 },
      { index: 1.53, radius: 49 },
      { index: 1.498, radius: 49 },
    ],
    printed: { 0: 2.5, 1: -7.69, 2: 6.31, 3: -8.33, 4: 10.82, 5: 10.16 },
    tolerance: 0.005,
    source: 'NFOS-06P',
  },
  {
    id: '6-07',
    input: [
      { index: 1.523, radius: 85 },
      { index: 1.586, radius: 150 },
      { index: 2, radius: 1000 },
    ],
    printed: { 0: 6.15, 1: 3.91, 2: 1 },
    tolerance: 0.005,
    source: 'NFOS-06A',
  },
];

/** Index and power of each surface, and its radius to a whole millimetre. */
export const radii: PublishedAnswer<readonly { index: number; power: number }[]> = {
  id: '6-05',
  input: [
    { index: 1.53, power: 5 },
    { index: 1.53, power: -1.25 },
    { index: 1.523, power: -8.5 },
    { index: 1.6, power: 11.37 },
    { index: 1.5, power: -20 },
    { index: 1.7, power: 20 },
  ],
  printed: { 0: 106, 1: -424, 2: -62, 3: 53, 4: -25, 5: 35 },
  tolerance: 0.5,
  source: 'NFOS-06P',
  note: '11.37 stands for 11.375; both give 53 mm.',
};

/** Surfaces given by radius and by power. */
export const mixedSurfaces: PublishedAnswer<{
  readonly toPower: readonly { index: number; radius: number }[];
  readonly toRadius: readonly { index: number; power: number }[];
}> = {
  id: '6-06',
  input: {
    toPower: [
      { index: 1.523, radius: 1350 },
      { index: 1.498, radius: 35 },
    ],
    toRadius: [
      { index: 1.523, power: 6 },
      { index: 1.498, power: 2.5 },
      { index: 1.586, power: 6 },
    ],
  },
  printed: { power0: 0.39, power1: 14.23, radius0: 87, radius1: 200, radius2: 98 },
  tolerance: { power0: 0.005, power1: 0.005, radius0: 0.5, radius1: 5, radius2: 0.5 },
  source: 'NFOS-06P',
  note: 'The second radius is printed as 20 cm.',
};

/** Thin lenses from index and two radii (metres, sign rule of optical design), with the nearest eighth where one is printed. */
export const lensmaker: PublishedAnswer<readonly { index: number; radii: readonly (readonly [1 | -1, number])[] }[]> = {
  id: '6-08',
  input: [
    {
      index: 1.5,
      radii: [
        [1, 0.08],
        [-1, 0.2222],
      ],
    },
    {
      index: 1.6,
      radii: [
        [1, 0.12],
        [-1, 0.075],
      ],
    },
    {
      index: 1.7,
      radii: [
        [1, 0.112],
        [-1, 0.175],
      ],
    },
    { index: 1.586, radii: [[1, 0.5]] },
    { index: 1.523, radii: [[-1, 0.045]] },
    {
      index: 1.7,
      radii: [
        [1, 0.7],
        [1, 1.5],
      ],
    },
    {
      index: 1.498,
      radii: [
        [-1, 0.25],
        [-1, 0.375],
      ],
    },
  ],
  printed: { 0: 4, 1: -3, 2: 2.25, 3: 1.12, 4: -11.62, 5: 1.5, 6: -3.37 },
  tolerance: 'nearest eighth',
  source: 'NFOS-06C',
  note: 'Every answer is given as an eighth, cut after two digits; 1.17, 1.47 and −3.32 are printed beside theirs.',
};

/** Front surface with the wanted power, and front surface with the back one. */
export const nominalPowers: PublishedAnswer<{
  readonly wanted: readonly { front: number; power: number }[];
  readonly made: readonly { front: number; back: number }[];
}> = {
  id: '6-09',
  input: {
    wanted: [
      { front: 8, power: 3.5 },
      { front: 8, power: -3 },
    ],
    made: [{ front: 9.25, back: -2.25 }],
  },
  printed: { back0: -4.5, back1: -11, power0: 7 },
  tolerance: 1e-9,
  source: 'NFOS-06B',
};
