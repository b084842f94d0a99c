import {
  addRows,
  always,
  axisRows,
  degrees,
  dioptres,
  millimetres,
  powerRows,
  prismPlusShift,
  whenOrdered,
} from './cells';
import type { Provenance, ToleranceSet } from './tolerance-set';

const seen = {
  source: 'iso-8980-1-2004-poster',
  evidence: 'secondary',
  alsoIn: ['iso-8980-low-power-article', 'iso-8980-journal-article'],
  note: 'Every cell was seen once; the further sources agree on single cells.',
} as const satisfies Provenance;

const remembered = { source: 'iso-8980-from-memory', evidence: 'memory' } as const satisfies Provenance;

/** ISO 8980-1 and 8980-2:2004, uncut finished lenses. */
export const iso_8980_2004: ToleranceSet = {
  id: 'iso-8980-2004',
  title: 'ISO 8980-1 and ISO 8980-2:2004, uncut finished spectacle lenses',
  publisher: 'International Organization for Standardization',
  edition: '2004',
  jurisdiction: 'where adopted, as BS EN, DIN EN, NBR and other national editions',
  scope: ['uncut'],
  comparison: 'inclusive',
  cautions: [
    'Collected from a trade poster and from memory; the bought text of the standard rules.',
    'Replaced by the 2017 edition.',
    'Where the maker has compensated for the position of wear, the tolerances apply to the corrected value.',
    'For lenses before glazing only; a mounted pair has limits of its own.',
  ],

  power: [
    {
      lenses: ['single-vision-multifocal'],
      judged: 'each-meridian',
      note: 'A sphere has no cylinder limit; each of its meridians is limited by itself.',
      rows: powerRows(
        [{ above: 0, atMost: 0.75 }, { above: 0.75, atMost: 4 }, { above: 4, atMost: 6 }, { above: 6 }],
        [
          [{ atLeast: 0, atMost: 3 }, dioptres(0.12), [dioptres(0.09), dioptres(0.12), dioptres(0.18), dioptres(0.25)]],
          [{ above: 3, atMost: 6 }, dioptres(0.12), [dioptres(0.12), dioptres(0.12), dioptres(0.18), dioptres(0.25)]],
          [{ above: 6, atMost: 9 }, dioptres(0.12), [dioptres(0.12), dioptres(0.18), dioptres(0.18), dioptres(0.25)]],
          [{ above: 9, atMost: 12 }, dioptres(0.18), [dioptres(0.12), dioptres(0.18), dioptres(0.25), dioptres(0.25)]],
          [{ above: 12, atMost: 20 }, dioptres(0.25), [dioptres(0.18), dioptres(0.25), dioptres(0.25), dioptres(0.25)]],
          [{ above: 20 }, dioptres(0.37), [dioptres(0.25), dioptres(0.25), dioptres(0.37), dioptres(0.37)]],
        ],
        seen,
      ),
    },
    {
      lenses: ['progressive'],
      judged: 'each-meridian',
      note: 'At the primary reference point. One trade poster prints a single, tighter table for all lens types.',
      rows: powerRows(
        [{ atLeast: 0, atMost: 0.75 }, { above: 0.75, atMost: 4 }, { above: 4, atMost: 6 }, { above: 6 }],
        [
          [{ atLeast: 0, atMost: 6 }, dioptres(0.12), [dioptres(0.12), dioptres(0.18), dioptres(0.18), dioptres(0.25)]],
          [{ above: 6, atMost: 9 }, dioptres(0.18), [dioptres(0.18), dioptres(0.18), dioptres(0.18), dioptres(0.25)]],
          [{ above: 9, atMost: 12 }, dioptres(0.18), [dioptres(0.18), dioptres(0.18), dioptres(0.25), dioptres(0.25)]],
          [{ above: 12, atMost: 20 }, dioptres(0.25), [dioptres(0.18), dioptres(0.25), dioptres(0.25), dioptres(0.25)]],
          [{ above: 20 }, dioptres(0.37), [dioptres(0.25), dioptres(0.25), dioptres(0.37), dioptres(0.37)]],
        ],
        remembered,
      ),
    },
  ],

  axis: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      rows: axisRows(
        [
          [{ atLeast: 0, atMost: 0.25 }, degrees(7)],
          [{ above: 0.25, atMost: 0.5 }, degrees(7)],
          [{ above: 0.5, atMost: 0.75 }, degrees(5)],
          [{ above: 0.75, atMost: 1.5 }, degrees(3)],
          [{ above: 1.5, atMost: 2.5 }, degrees(2)],
          [{ above: 2.5 }, degrees(2)],
        ],
        remembered,
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
        remembered,
      ),
    },
  ],

  lensPrism: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      supply: ['uncut'],
      combine: 'all',
      powerOf: 'strongest-meridian',
      note: 'An older form has 0.25, 0.37 and 0.50 alone, to be met within 1 mm of the reference point. The ordered prism includes thinning.',
      rows: [
        {
          component: 'horizontal',
          orderedPrism: { atLeast: 0, atMost: 2 },
          limits: [prismPlusShift(0.25, 1)],
          ...remembered,
        },
        {
          component: 'horizontal',
          orderedPrism: { above: 2, atMost: 10 },
          limits: [prismPlusShift(0.37, 1)],
          ...remembered,
        },
        { component: 'horizontal', orderedPrism: { above: 10 }, limits: [prismPlusShift(0.5, 1)], ...remembered },
        {
          component: 'vertical',
          orderedPrism: { atLeast: 0, atMost: 2 },
          limits: [prismPlusShift(0.25, 0.5)],
          ...remembered,
        },
        {
          component: 'vertical',
          orderedPrism: { above: 2, atMost: 10 },
          limits: [prismPlusShift(0.37, 0.5)],
          ...remembered,
        },
        { component: 'vertical', orderedPrism: { above: 10 }, limits: [prismPlusShift(0.5, 0.5)], ...remembered },
      ],
    },
  ],

  segmentSize: always(millimetres(0.5), 'each-eye', { source: 'iso-8980-1-slides', evidence: 'secondary' }),
  segmentSizeDifference: always(millimetres(0.7), 'pair-difference', remembered),
  centreThickness: whenOrdered(millimetres(0.3), 'each-eye', {
    source: 'iso-8980-1-2004-excerpt',
    evidence: 'published',
    note: 'From nominal, at the distance reference point of the front surface, normal to it. Not for blanks made for a shape.',
  }),
};
