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

const guide = { source: 'z80.1-2015-reference-guide', evidence: 'secondary' } as const satisfies Provenance;

const guideAndStudyPage = { ...guide, alsoIn: ['z80.1-2015-study-page'] } as const satisfies Provenance;

const distance = { ...guide, alsoIn: ['z80.1-2015-study-page', 'z80.1-course-cards'] } as const satisfies Provenance;

const progressiveDistance = {
  ...guide,
  alsoIn: ['z80.1-2015-study-page', 'z80.1-2005-abstract', 'z80.1-2005-white-paper'],
} as const satisfies Provenance;

const axis = {
  ...guide,
  alsoIn: ['z80.1-2015-study-page', 'z80.1-course-cards', 'z80.1-2005-white-paper', 'z80.1-2005-abstract'],
} as const satisfies Provenance;

const vertical = {
  ...guide,
  alsoIn: ['z80.1-2015-study-page', 'z80.1-course-cards', 'height-quiz'],
} as const satisfies Provenance;

const horizontal = {
  ...guide,
  alsoIn: ['z80.1-2015-study-page', 'z80.1-course-cards', 'z80.1-2010-horizontal-quotation'],
} as const satisfies Provenance;

const study = {
  source: 'z80.1-2015-study-page',
  evidence: 'secondary',
  alsoIn: ['z80.1-cards-a'],
} as const satisfies Provenance;

const decks = {
  source: 'z80.1-cards-a',
  evidence: 'secondary',
  alsoIn: ['z80.1-1999-page', 'z80.1-cards-b'],
  note: 'Seen for 1999 and in study cards that name no edition.',
} as const satisfies Provenance;

const carriedOver = {
  source: 'z80.1-1999-page',
  evidence: 'memory',
  note: 'Seen for 1999 only. That the figure still stands in 2015 is from memory.',
} as const satisfies Provenance;

const progressivePair = {
  source: 'z80.1-2005-progressive-quotation',
  evidence: 'memory',
  alsoIn: ['z80.1-1999-page'],
  note: 'Seen for 1999 and 2005. The 2015 row was cut off in every copy; that it is the same is from memory.',
} as const satisfies Provenance;

const remembered = { source: 'z80.1-from-memory', evidence: 'memory' } as const satisfies Provenance;

/** ANSI Z80.1-2015, United States, prescription dress eyewear. */
export const z80_1_2015: ToleranceSet = {
  id: 'z80.1-2015',
  title: 'ANSI Z80.1-2015, prescription spectacle lenses',
  publisher: 'American National Standards Institute',
  edition: '2015',
  jurisdiction: 'United States; voluntary unless a state adopts it',
  scope: ['uncut', 'edged', 'glazed'],
  comparison: 'inclusive',
  cautions: [
    'Collected from summaries of the standard; the bought text and the local code rule.',
    'A 2020 edition exists; its power figures are said to be the same, but no table of it was seen.',
    'The standard describes itself as a guideline, so a failed item is a finding to report and no legal verdict.',
    'Whether one lens of a pair may hold the whole 0.67 prism dioptres is disputed; the printed figure is a total.',
  ],

  power: [
    {
      lenses: ['single-vision-multifocal'],
      judged: 'strongest-meridian',
      rows: powerRows(
        [{ atLeast: 0, atMost: 2 }, { above: 2, atMost: 4.5 }, { above: 4.5 }],
        [
          [{ atLeast: 0, atMost: 6.5 }, dioptres(0.13), [dioptres(0.13), dioptres(0.15), percentOf('cylinder', 4)]],
          [{ above: 6.5 }, percentOf('meridian', 2), [dioptres(0.13), dioptres(0.15), percentOf('cylinder', 4)]],
        ],
        distance,
      ),
    },
    {
      lenses: ['progressive'],
      judged: 'strongest-meridian',
      rows: powerRows(
        [{ atLeast: 0, atMost: 2 }, { above: 2, atMost: 3.5 }, { above: 3.5 }],
        [
          [{ atLeast: 0, atMost: 8 }, dioptres(0.16), [dioptres(0.16), dioptres(0.18), percentOf('cylinder', 5)]],
          [{ above: 8 }, percentOf('meridian', 2), [dioptres(0.16), dioptres(0.18), percentOf('cylinder', 5)]],
        ],
        progressiveDistance,
      ),
    },
  ],

  axis: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      rows: axisRows(
        [
          [{ atLeast: 0, below: 0.12 }, notDefined],
          [{ atLeast: 0.12, atMost: 0.25 }, degrees(14)],
          [{ above: 0.25, atMost: 0.5 }, degrees(7)],
          [{ above: 0.5, atMost: 0.75 }, degrees(5)],
          [{ above: 0.75, atMost: 1.5 }, degrees(3)],
          [{ above: 1.5 }, degrees(2)],
        ],
        axis,
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
        guideAndStudyPage,
      ),
    },
  ],

  lensPrism: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      supply: ['uncut', 'edged'],
      combine: 'any',
      powerOf: 'along-the-error',
      note: 'The reference point may lie 1.0 mm from its place in any direction, or the prism there may be 0.33.',
      rows: [
        {
          component: 'resultant',
          orderedPrism: { atLeast: 0 },
          limits: [prism(0.33), shift(1)],
          ...guide,
        },
      ],
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
          ...vertical,
        },
        {
          power: { above: 3.375 },
          limit: shift(1),
          judged: 'height-difference',
          counted: 'pair-difference',
          ...vertical,
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
          ...horizontal,
        },
        { power: { above: 2.75 }, limit: shift(2.5), judged: 'distance-pd', counted: 'pair-total', ...horizontal },
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
          ...carriedOver,
        },
        {
          power: { above: 3.375 },
          limit: shift(1),
          judged: 'reference-point-height',
          counted: 'each-eye',
          ...carriedOver,
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
          ...progressivePair,
        },
        {
          power: { above: 3.75 },
          limit: shift(1),
          judged: 'monocular-pd',
          counted: 'each-eye',
          ...progressivePair,
        },
      ],
    },
  ],

  segmentHeight: always(millimetres(1), 'each-eye', study),
  segmentHeightDifference: always(millimetres(1), 'pair-difference', {
    source: 'z80.1-2015-study-page',
    evidence: 'secondary',
    alsoIn: ['z80.1-2010-summary'],
  }),
  segmentHorizontal: always(millimetres(2.5), 'pair-total', {
    source: 'z80.1-2015-study-page',
    evidence: 'secondary',
    alsoIn: ['z80.1-cards-a', 'virginia-18-vac-80-30-120'],
    note: 'Of the near PD. The insets should look symmetrical unless monocular values are ordered.',
  }),
  segmentTilt: always(degrees(2), 'each-eye', study),
  segmentSize: always(millimetres(0.5), 'each-eye', carriedOver),
  segmentSizeDifference: always(millimetres(0.7), 'pair-difference', carriedOver),
  fittingHeight: always(millimetres(1), 'each-eye', carriedOver),
  fittingHeightDifference: always(millimetres(1), 'pair-difference', remembered),
  fittingHorizontal: always(millimetres(1), 'each-eye', remembered),
  markTilt: always(degrees(2), 'each-eye', remembered),
  baseCurve: whenOrdered(dioptres(0.75), 'each-eye', decks),
  centreThickness: whenOrdered(millimetres(0.3), 'each-eye', decks),
  warp: always(dioptres(1), 'each-eye', {
    source: 'virginia-18-vac-80-30-120',
    evidence: 'secondary',
    alsoIn: ['z80.1-cards-a'],
    note: 'Not applied within 6 mm of the eyewire.',
  }),
};
