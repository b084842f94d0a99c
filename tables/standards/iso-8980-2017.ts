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

const unchanged = {
  source: 'iso-8980-1-2004-poster',
  evidence: 'memory',
  note: 'Seen for 2004. That 2017 left it unchanged is from memory.',
} as const satisfies Provenance;

const remembered = { source: 'iso-8980-from-memory', evidence: 'memory' } as const satisfies Provenance;

/** ISO 8980-1 and 8980-2:2017, uncut finished lenses. */
export const iso_8980_2017: ToleranceSet = {
  id: 'iso-8980-2017',
  title: 'ISO 8980-1 and ISO 8980-2:2017, uncut finished spectacle lenses',
  publisher: 'International Organization for Standardization',
  edition: '2017',
  jurisdiction: 'where adopted, as BS EN, DIN EN, NBR and other national editions',
  scope: ['uncut'],
  comparison: 'inclusive',
  cautions: [
    'Most figures are from memory; buy or borrow the standard before relying on a verdict that they decide.',
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
        unchanged,
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
      note: 'The last band may be 1 degree; the memory of it is uncertain.',
      rows: axisRows(
        [
          [{ atLeast: 0, atMost: 0.25 }, degrees(14)],
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
      note: 'Remembered for 2004 and carried over. The ordered prism includes thinning.',
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
    evidence: 'memory',
    note: 'Seen for 2004, from nominal, at the distance reference point of the front surface. That 2017 has it is from memory.',
  }),
};
