import {
  addRows,
  always,
  axisRows,
  degrees,
  dioptres,
  millimetres,
  notDefined,
  powerRows,
  prism,
  prismPlusShift,
  shift,
  whenOrdered,
} from './cells';
import type { PairPrismRow, Provenance, ToleranceSet } from './tolerance-set';

const uncutTable = {
  source: 'iso-8980-1-2004-poster',
  evidence: 'memory',
  note: 'Seen for uncut lenses. That the mounted table repeats it is from memory, with partial agreement of study cards.',
} as const satisfies Provenance;

const cards = { source: 'iso-21987-study-cards', evidence: 'secondary' } as const satisfies Provenance;

const remembered = { source: 'iso-21987-from-memory', evidence: 'memory' } as const satisfies Provenance;

const imbalance = {
  judged: 'prism-imbalance',
  counted: 'pair-difference',
  ...remembered,
} as const satisfies Partial<PairPrismRow>;

/** ISO 21987:2017, mounted spectacle lenses. */
export const iso_21987_2017: ToleranceSet = {
  id: 'iso-21987-2017',
  title: 'ISO 21987:2017, mounted spectacle lenses',
  publisher: 'International Organization for Standardization',
  edition: '2017',
  jurisdiction: 'where adopted, as BS EN, DIN EN, NBR and other national editions',
  scope: ['glazed'],
  comparison: 'inclusive',
  cautions: [
    'Most figures are from memory; buy or borrow the standard before relying on a verdict that they decide.',
    'Where the maker states a verification power, ranges and tolerances apply to that value.',
    'Single-vision lenses ordered for a stated position are outside the pair limits, like progressives.',
    'Different ways of measuring power and prism give different results on the same pair; state the method.',
  ],

  power: [
    {
      lenses: ['single-vision-multifocal'],
      judged: 'each-meridian',
      note: 'A cylinder above 6.00 D cannot occur in the first row, where no meridian exceeds 3.00 D. A sphere has no cylinder limit.',
      rows: powerRows(
        [{ above: 0, atMost: 0.75 }, { above: 0.75, atMost: 4 }, { above: 4, atMost: 6 }, { above: 6 }],
        [
          [{ atLeast: 0, atMost: 3 }, dioptres(0.12), [dioptres(0.09), dioptres(0.12), dioptres(0.18), notDefined]],
          [{ above: 3, atMost: 6 }, dioptres(0.12), [dioptres(0.12), dioptres(0.12), dioptres(0.18), dioptres(0.25)]],
          [{ above: 6, atMost: 9 }, dioptres(0.12), [dioptres(0.12), dioptres(0.18), dioptres(0.18), dioptres(0.25)]],
          [{ above: 9, atMost: 12 }, dioptres(0.18), [dioptres(0.12), dioptres(0.18), dioptres(0.25), dioptres(0.25)]],
          [{ above: 12, atMost: 20 }, dioptres(0.25), [dioptres(0.18), dioptres(0.25), dioptres(0.25), dioptres(0.25)]],
          [{ above: 20 }, dioptres(0.37), [dioptres(0.25), dioptres(0.25), dioptres(0.37), dioptres(0.37)]],
        ],
        uncutTable,
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
      note: 'Whether 0.125 D itself is inside the first band is not settled; the study cards include it.',
      rows: axisRows(
        [
          [{ atLeast: 0, atMost: 0.125 }, notDefined],
          [{ above: 0.125, atMost: 0.25 }, degrees(16)],
          [{ above: 0.25, atMost: 0.5 }, degrees(9)],
          [{ above: 0.5, atMost: 0.75 }, degrees(6)],
          [{ above: 0.75, atMost: 1.5 }, degrees(4)],
          [{ above: 1.5, atMost: 2.5 }, degrees(3)],
          [{ above: 2.5 }, degrees(2)],
        ],
        cards,
      ),
    },
  ],

  add: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      note: 'One test laboratory gives up to 0.25 D for finished progressives, without bands.',
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
      lenses: ['progressive'],
      supply: ['glazed'],
      combine: 'all',
      powerOf: 'strongest-meridian',
      note: 'Each lens by the table for uncut lenses; the principle was seen, the figures are from memory. The ordered prism includes thinning.',
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

  pairPrism: [
    {
      lenses: ['single-vision-multifocal'],
      component: 'horizontal',
      powerOf: 'stronger-lens-along-the-error',
      note: 'Which lens chooses the row was not found for ISO; the larger absolute power is Chinese national practice.',
      rows: [
        {
          orderedPrism: { atLeast: 0, atMost: 2 },
          power: { atLeast: 0, atMost: 3.25 },
          limit: prism(0.67),
          ...imbalance,
        },
        { orderedPrism: { atLeast: 0, atMost: 2 }, power: { above: 3.25 }, limit: shift(2), ...imbalance },
        { orderedPrism: { above: 2, atMost: 10 }, power: { atLeast: 0, atMost: 3.25 }, limit: prism(1), ...imbalance },
        {
          orderedPrism: { above: 2, atMost: 10 },
          power: { above: 3.25 },
          limit: prismPlusShift(0.33, 2),
          ...imbalance,
        },
        { orderedPrism: { above: 10 }, power: { atLeast: 0, atMost: 3.25 }, limit: prism(1.25), ...imbalance },
        { orderedPrism: { above: 10 }, power: { above: 3.25 }, limit: prismPlusShift(0.58, 2), ...imbalance },
      ],
    },
    {
      lenses: ['single-vision-multifocal'],
      component: 'vertical',
      powerOf: 'stronger-lens-along-the-error',
      note: 'Which lens chooses the row was not found for ISO; the larger absolute power is Chinese national practice.',
      rows: [
        { orderedPrism: { atLeast: 0, atMost: 2 }, power: { atLeast: 0, atMost: 5 }, limit: prism(0.5), ...imbalance },
        { orderedPrism: { atLeast: 0, atMost: 2 }, power: { above: 5 }, limit: shift(1), ...imbalance },
        { orderedPrism: { above: 2, atMost: 10 }, power: { atLeast: 0, atMost: 5 }, limit: prism(0.75), ...imbalance },
        { orderedPrism: { above: 2, atMost: 10 }, power: { above: 5 }, limit: prismPlusShift(0.25, 1), ...imbalance },
        { orderedPrism: { above: 10 }, power: { atLeast: 0, atMost: 5 }, limit: prism(1), ...imbalance },
        { orderedPrism: { above: 10 }, power: { above: 5 }, limit: prismPlusShift(0.5, 1), ...imbalance },
      ],
    },
  ],

  segmentHeight: always(millimetres(1), 'each-eye', cards),
  segmentHeightDifference: always(millimetres(1), 'pair-difference', {
    ...remembered,
    note: 'Unless unequal heights are ordered.',
  }),
  segmentHorizontal: always(millimetres(1), 'each-eye', cards),
  segmentTilt: always(degrees(2), 'each-eye', cards),
  fittingHeight: always(millimetres(1), 'each-eye', cards),
  fittingHeightDifference: always(millimetres(1), 'pair-difference', {
    ...remembered,
    note: 'Unless unequal heights are ordered.',
  }),
  fittingHorizontal: always(millimetres(1), 'each-eye', cards),
  markTilt: always(degrees(2), 'each-eye', cards),
  centreThickness: whenOrdered(millimetres(0.3), 'each-eye', {
    source: 'iso-8980-1-2004-excerpt',
    evidence: 'memory',
    note: 'Seen for uncut lenses; that the mounted standard has it is from memory.',
  }),
};
