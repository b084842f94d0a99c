import type { Provenance, ToleranceSet } from './tolerance-set';

const guide = {
  source: 'z80.1-2015-reference-guide',
  evidence: 'secondary',
  alsoIn: ['z80.1-2015-study-page'],
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
      rows: [
        {
          power: { atLeast: 0, atMost: 6.5 },
          meridian: { limit: { kind: 'absolute', amount: 0.13, unit: 'D' }, ...guide },
          cylinder: [
            { cylinder: { atLeast: 0, atMost: 2 }, limit: { kind: 'absolute', amount: 0.13, unit: 'D' }, ...guide },
            { cylinder: { above: 2, atMost: 4.5 }, limit: { kind: 'absolute', amount: 0.15, unit: 'D' }, ...guide },
            { cylinder: { above: 4.5 }, limit: { kind: 'percent', percent: 4, of: 'cylinder' }, ...guide },
          ],
        },
        {
          power: { above: 6.5 },
          meridian: { limit: { kind: 'percent', percent: 2, of: 'meridian' }, ...guide },
          cylinder: [
            { cylinder: { atLeast: 0, atMost: 2 }, limit: { kind: 'absolute', amount: 0.13, unit: 'D' }, ...guide },
            { cylinder: { above: 2, atMost: 4.5 }, limit: { kind: 'absolute', amount: 0.15, unit: 'D' }, ...guide },
            { cylinder: { above: 4.5 }, limit: { kind: 'percent', percent: 4, of: 'cylinder' }, ...guide },
          ],
        },
      ],
    },
    {
      lenses: ['progressive'],
      judged: 'strongest-meridian',
      rows: [
        {
          power: { atLeast: 0, atMost: 8 },
          meridian: { limit: { kind: 'absolute', amount: 0.16, unit: 'D' }, ...guide },
          cylinder: [
            { cylinder: { atLeast: 0, atMost: 2 }, limit: { kind: 'absolute', amount: 0.16, unit: 'D' }, ...guide },
            { cylinder: { above: 2, atMost: 3.5 }, limit: { kind: 'absolute', amount: 0.18, unit: 'D' }, ...guide },
            { cylinder: { above: 3.5 }, limit: { kind: 'percent', percent: 5, of: 'cylinder' }, ...guide },
          ],
        },
        {
          power: { above: 8 },
          meridian: { limit: { kind: 'percent', percent: 2, of: 'meridian' }, ...guide },
          cylinder: [
            { cylinder: { atLeast: 0, atMost: 2 }, limit: { kind: 'absolute', amount: 0.16, unit: 'D' }, ...guide },
            { cylinder: { above: 2, atMost: 3.5 }, limit: { kind: 'absolute', amount: 0.18, unit: 'D' }, ...guide },
            { cylinder: { above: 3.5 }, limit: { kind: 'percent', percent: 5, of: 'cylinder' }, ...guide },
          ],
        },
      ],
    },
  ],

  axis: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      rows: [
        { cylinder: { atLeast: 0, below: 0.12 }, limit: { kind: 'not-defined' }, ...guide },
        { cylinder: { atLeast: 0.12, atMost: 0.25 }, limit: { kind: 'absolute', amount: 14, unit: 'deg' }, ...guide },
        { cylinder: { above: 0.25, atMost: 0.5 }, limit: { kind: 'absolute', amount: 7, unit: 'deg' }, ...guide },
        { cylinder: { above: 0.5, atMost: 0.75 }, limit: { kind: 'absolute', amount: 5, unit: 'deg' }, ...guide },
        { cylinder: { above: 0.75, atMost: 1.5 }, limit: { kind: 'absolute', amount: 3, unit: 'deg' }, ...guide },
        { cylinder: { above: 1.5 }, limit: { kind: 'absolute', amount: 2, unit: 'deg' }, ...guide },
      ],
    },
  ],

  add: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      rows: [
        { add: { atLeast: 0, atMost: 4 }, limit: { kind: 'absolute', amount: 0.12, unit: 'D' }, ...guide },
        { add: { above: 4 }, limit: { kind: 'absolute', amount: 0.18, unit: 'D' }, ...guide },
      ],
    },
  ],

  lensPrism: [
    {
      lenses: ['single-vision-multifocal', 'progressive'],
      supply: ['uncut', 'edged'],
      combine: 'any',
      powerOf: 'along-the-error',
      rows: [
        {
          component: 'resultant',
          orderedPrism: { atLeast: 0 },
          limits: [
            { kind: 'prism', amount: 0.33 },
            { kind: 'shift', mm: 1 },
          ],
          source: 'z80.1-2015-reference-guide',
          evidence: 'secondary',
          note: 'The reference point may lie 1.0 mm from its place in any direction, or the prism there may be 0.33.',
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
          limit: { kind: 'prism', amount: 0.33 },
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...guide,
        },
        {
          power: { above: 3.375 },
          limit: { kind: 'shift', mm: 1 },
          judged: 'height-difference',
          counted: 'pair-difference',
          ...guide,
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
          limit: { kind: 'prism', amount: 0.67 },
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...guide,
        },
        {
          power: { above: 2.75 },
          limit: { kind: 'shift', mm: 2.5 },
          judged: 'distance-pd',
          counted: 'pair-total',
          ...guide,
        },
      ],
    },
    {
      lenses: ['progressive'],
      component: 'vertical',
      powerOf: 'stronger-lens-along-the-error',
      rows: [
        {
          power: { atLeast: 0, atMost: 3.375 },
          limit: { kind: 'prism', amount: 0.33 },
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...carriedOver,
        },
        {
          power: { above: 3.375 },
          limit: { kind: 'shift', mm: 1 },
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
          limit: { kind: 'prism', amount: 0.67 },
          judged: 'prism-imbalance',
          counted: 'pair-total',
          ...progressivePair,
        },
        {
          power: { above: 3.75 },
          limit: { kind: 'shift', mm: 1 },
          judged: 'monocular-pd',
          counted: 'each-eye',
          ...progressivePair,
        },
      ],
    },
  ],

  segmentHeight: {
    limit: { kind: 'absolute', amount: 1, unit: 'mm' },
    counted: 'each-eye',
    applies: 'always',
    ...study,
  },
  segmentHeightDifference: {
    limit: { kind: 'absolute', amount: 1, unit: 'mm' },
    counted: 'pair-difference',
    applies: 'always',
    source: 'z80.1-2015-study-page',
    evidence: 'secondary',
    alsoIn: ['z80.1-2010-summary'],
  },
  segmentHorizontal: {
    limit: { kind: 'absolute', amount: 2.5, unit: 'mm' },
    counted: 'pair-total',
    applies: 'always',
    source: 'z80.1-2015-study-page',
    evidence: 'secondary',
    alsoIn: ['z80.1-cards-a', 'virginia-18-vac-80-30-120'],
    note: 'Of the near PD. The insets should look symmetrical unless monocular values are ordered.',
  },
  segmentTilt: {
    limit: { kind: 'absolute', amount: 2, unit: 'deg' },
    counted: 'each-eye',
    applies: 'always',
    ...study,
  },
  segmentSize: {
    limit: { kind: 'absolute', amount: 0.5, unit: 'mm' },
    counted: 'each-eye',
    applies: 'always',
    ...carriedOver,
  },
  segmentSizeDifference: {
    limit: { kind: 'absolute', amount: 0.7, unit: 'mm' },
    counted: 'pair-difference',
    applies: 'always',
    ...carriedOver,
  },
  fittingHeight: {
    limit: { kind: 'absolute', amount: 1, unit: 'mm' },
    counted: 'each-eye',
    applies: 'always',
    ...carriedOver,
  },
  fittingHeightDifference: {
    limit: { kind: 'absolute', amount: 1, unit: 'mm' },
    counted: 'pair-difference',
    applies: 'always',
    ...remembered,
  },
  fittingHorizontal: {
    limit: { kind: 'absolute', amount: 1, unit: 'mm' },
    counted: 'each-eye',
    applies: 'always',
    ...remembered,
  },
  markTilt: {
    limit: { kind: 'absolute', amount: 2, unit: 'deg' },
    counted: 'each-eye',
    applies: 'always',
    ...remembered,
  },
  baseCurve: {
    limit: { kind: 'absolute', amount: 0.75, unit: 'D' },
    counted: 'each-eye',
    applies: 'when-ordered',
    ...decks,
  },
  centreThickness: {
    limit: { kind: 'absolute', amount: 0.3, unit: 'mm' },
    counted: 'each-eye',
    applies: 'when-ordered',
    ...decks,
  },
  warp: {
    limit: { kind: 'absolute', amount: 1, unit: 'D' },
    counted: 'each-eye',
    applies: 'always',
    source: 'virginia-18-vac-80-30-120',
    evidence: 'secondary',
    alsoIn: ['z80.1-cards-a'],
    note: 'Not applied within 6 mm of the eyewire.',
  },
};
