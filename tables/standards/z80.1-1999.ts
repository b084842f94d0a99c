import {
  addRows,
  always,
  axisRows,
  degrees,
  dioptres,
  millimetres,
  notDefined,
  percentOf,
  powerRows,
  prism,
  shift,
  whenOrdered,
} from './cells';
import type { Provenance, ToleranceSet } from './tolerance-set';

const seen = { source: 'z80.1-1999-page', evidence: 'secondary' } as const satisfies Provenance;

const carriedBack = {
  source: 'virginia-18-vac-80-30-120',
  evidence: 'memory',
  note: 'An older state rule prints the amounts. That 1999 has them with the thresholds of later editions is from memory.',
} as const satisfies Provenance;

const stateRule = {
  source: 'virginia-18-vac-80-30-120',
  evidence: 'memory',
  note: 'An older state rule prints the figure. That 1999 has it is from memory.',
} as const satisfies Provenance;

/** ANSI Z80.1-1999, United States, kept for older work and for state rules that still quote it. */
export const z80_1_1999: ToleranceSet = {
  id: 'z80.1-1999',
  title: 'ANSI Z80.1-1999, prescription spectacle lenses',
  publisher: 'American National Standards Institute',
  edition: '1999',
  jurisdiction: 'United States; voluntary unless a state adopts it',
  scope: ['uncut', 'edged', 'glazed'],
  comparison: 'inclusive',
  cautions: [
    'Collected from a reproduction of the standard that breaks off; the bought text and the local code rule.',
    'Replaced by the 2005 edition and its successors.',
    'The limit for an unmounted lens was not seen for this edition and is left out.',
  ],

  power: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      judged: 'strongest-meridian',
      note: 'Progressives got limits of their own with the 2005 edition.',
      rows: powerRows(
        [{ atLeast: 0, atMost: 2 }, { above: 2, atMost: 4.5 }, { above: 4.5 }],
        [
          [{ atLeast: 0, atMost: 6.5 }, dioptres(0.13), [dioptres(0.13), dioptres(0.15), percentOf('cylinder', 4)]],
          [{ above: 6.5 }, percentOf('meridian', 2), [dioptres(0.13), dioptres(0.15), percentOf('cylinder', 4)]],
        ],
        { ...seen, alsoIn: ['virginia-18-vac-80-30-120'] },
      ),
    },
  ],

  axis: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      note: 'The table states nothing below 0.12 D.',
      rows: axisRows(
        [
          [{ atLeast: 0, below: 0.12 }, notDefined],
          [{ atLeast: 0.12, atMost: 0.37 }, degrees(7)],
          [{ above: 0.37, atMost: 0.75 }, degrees(5)],
          [{ above: 0.75, atMost: 1.5 }, degrees(3)],
          [{ above: 1.5 }, degrees(2)],
        ],
        seen,
      ),
    },
  ],

  add: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      rows: addRows(
        [
          [{ atLeast: 0, atMost: 4 }, dioptres(0.12)],
          [{ above: 4 }, dioptres(0.18)],
        ],
        seen,
      ),
    },
  ],

  pairPrism: [
    {
      lenses: ['single-vision-multifocal'],
      component: 'vertical',
      powerOf: 'stronger-lens-along-the-error',
      rows: [
        {
          power: { atLeast: 0, atMost: 3.375 },
          limit: prism(0.33),
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...carriedBack,
        },
        {
          power: { above: 3.375 },
          limit: shift(1),
          judged: 'height-difference',
          counted: 'pair-difference',
          ...carriedBack,
        },
      ],
    },
    {
      lenses: ['single-vision-multifocal'],
      component: 'horizontal',
      powerOf: 'stronger-lens-along-the-error',
      rows: [
        {
          power: { atLeast: 0, atMost: 2.75 },
          limit: prism(0.67),
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...carriedBack,
        },
        { power: { above: 2.75 }, limit: shift(2.5), judged: 'distance-pd', counted: 'pair-total', ...carriedBack },
      ],
    },
    {
      lenses: ['progressive'],
      component: 'vertical',
      powerOf: 'stronger-lens-along-the-error',
      rows: [
        {
          power: { atLeast: 0, atMost: 3.375 },
          limit: prism(0.33),
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...seen,
        },
        {
          power: { above: 3.375 },
          limit: shift(1),
          judged: 'reference-point-height',
          counted: 'each-eye',
          ...seen,
        },
      ],
    },
    {
      lenses: ['progressive'],
      component: 'horizontal',
      powerOf: 'stronger-lens-along-the-error',
      rows: [
        {
          power: { atLeast: 0, atMost: 3.75 },
          limit: prism(0.67),
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...seen,
        },
        { power: { above: 3.75 }, limit: shift(1), judged: 'monocular-pd', counted: 'each-eye', ...seen },
      ],
    },
  ],

  segmentHeight: always(millimetres(1), 'each-eye', { ...seen, alsoIn: ['virginia-18-vac-80-30-120'] }),
  segmentHorizontal: always(millimetres(2.5), 'pair-total', stateRule),
  segmentSize: always(millimetres(0.5), 'each-eye', seen),
  segmentSizeDifference: always(millimetres(0.7), 'pair-difference', seen),
  fittingHeight: always(millimetres(1), 'each-eye', seen),
  baseCurve: whenOrdered(dioptres(0.75), 'each-eye', { ...seen, alsoIn: ['virginia-18-vac-80-30-120'] }),
  centreThickness: whenOrdered(millimetres(0.3), 'each-eye', seen),
  warp: always(dioptres(1), 'each-eye', stateRule),
};
