/**
 * The tolerance tables once more, written down for the tests from the accounts named beside them and not from the
 * built-in sets, so that a slip of the pen in either shows. Bands follow one another without a gap: each runs from
 * above the end of the one before, the first from 0.00, up to and including its own end. Dioptres, degrees, millimetres.
 */
export type Limit = number | `${number} %` | null;

export type LensClass = 'single vision' | 'progressive';

export interface PrintedPower {
  readonly lenses: readonly LensClass[];
  /** Each principal meridian is limited by itself; otherwise only the one of highest absolute power. */
  readonly each: boolean;
  /** The ends of the columns of the cylinder; whether a sphere falls under the first one. */
  readonly columns: readonly number[];
  readonly sphereToo: boolean;
  /** End of the row, limit of the meridian, limits of the cylinder by column. */
  readonly rows: readonly (readonly [end: number, meridian: Limit, ...cylinder: readonly Limit[]])[];
}

export interface Banded {
  readonly lenses: readonly LensClass[];
  readonly rows: readonly (readonly [end: number, limit: number | null])[];
}

export interface PrintedAxis extends Banded {
  /** The end of the first band is outside it. */
  readonly firstEndOutside: boolean;
}

/** Unwanted prism of a pair: prism dioptres, millimetres, or prism that so many millimetres of shift make. */
export interface PrintedPair {
  readonly lenses: readonly LensClass[];
  readonly direction: 'horizontal' | 'vertical';
  readonly rows: readonly {
    /** Ordered prism: above and up to; absent where the table does not ask. */
    readonly ordered?: readonly [above: number, end: number];
    readonly above: number;
    readonly end: number;
    readonly prism?: number;
    /** Added to the prism: what a shift of so many millimetres makes. */
    readonly shift?: number;
    readonly mm?: number;
  }[];
}

/** Unwanted prism of one lens: an amount, and what is added for each dioptre of the strongest meridian. */
export interface PrintedLensPrism {
  readonly lenses: readonly LensClass[];
  readonly supply: 'uncut' | 'edged' | 'glazed';
  readonly direction: 'horizontal' | 'vertical' | 'any';
  readonly rows: readonly (readonly [end: number, amount: number, perDioptre: number])[];
  /** Or so many millimetres from its place. */
  readonly orMm?: number;
}

export interface Printed {
  readonly set: string;
  readonly power: readonly PrintedPower[];
  readonly axis: readonly PrintedAxis[];
  readonly add: readonly Banded[];
  readonly pair: readonly PrintedPair[];
  readonly lensPrism: readonly PrintedLensPrism[];
  readonly plain: {
    readonly segmentHeight?: number;
    readonly segmentHeightDifference?: number;
    /** Of the near PD. */
    readonly nearPd?: number;
    readonly segmentTilt?: number;
    readonly segmentSize?: number;
    readonly segmentSizeDifference?: number;
    readonly fittingHeight?: number;
    readonly fittingHeightDifference?: number;
    readonly fittingHorizontal?: number;
    readonly markTilt?: number;
    readonly baseCurve?: number;
    readonly centreThickness?: number;
    readonly warp?: number;
  };
}

const MORE = Number.POSITIVE_INFINITY;
const SINGLE: readonly LensClass[] = ['single vision'];
const PROGRESSIVE: readonly LensClass[] = ['progressive'];
const ALL: readonly LensClass[] = ['single vision', 'progressive'];

// Z80.1, single vision and segments: the 2015 reference guide, the 2010 summary and the 1999 page agree.
const ANSI_DISTANCE: PrintedPower = {
  lenses: SINGLE,
  each: false,
  columns: [2, 4.5, MORE],
  sphereToo: true,
  rows: [
    [6.5, 0.13, 0.13, 0.15, '4 %'],
    [MORE, '2 %', 0.13, 0.15, '4 %'],
  ],
};

// Z80.1, progressives since 2005: the 2010 summary and the 2015 reference guide.
const ANSI_PROGRESSIVE: PrintedPower = {
  lenses: PROGRESSIVE,
  each: false,
  columns: [2, 3.5, MORE],
  sphereToo: true,
  rows: [
    [8, 0.16, 0.16, 0.18, '5 %'],
    [MORE, '2 %', 0.16, 0.18, '5 %'],
  ],
};

// Z80.1-2005 and later: nothing is defined below 0.12 (2015 reference guide).
const ANSI_AXIS: PrintedAxis = {
  lenses: ALL,
  firstEndOutside: true,
  rows: [
    [0.12, null],
    [0.25, 14],
    [0.5, 7],
    [0.75, 5],
    [1.5, 3],
    [MORE, 2],
  ],
};

// Z80.1, 1999, 2010 and 2015. For ISO from memory.
const ADD: Banded = {
  lenses: ALL,
  rows: [
    [4, 0.12],
    [MORE, 0.18],
  ],
};

const ANSI_PAIR: readonly PrintedPair[] = [
  // 2015 reference guide; the spelling 3.375 also in a course quiz.
  {
    lenses: SINGLE,
    direction: 'vertical',
    rows: [
      { above: 0, end: 3.375, prism: 0.33 },
      { above: 3.375, end: MORE, mm: 1 },
    ],
  },
  {
    lenses: SINGLE,
    direction: 'horizontal',
    rows: [
      { above: 0, end: 2.75, prism: 0.67 },
      { above: 2.75, end: MORE, mm: 2.5 },
    ],
  },
  // 1999 page; for the later editions from memory.
  {
    lenses: PROGRESSIVE,
    direction: 'vertical',
    rows: [
      { above: 0, end: 3.375, prism: 0.33 },
      { above: 3.375, end: MORE, mm: 1 },
    ],
  },
  {
    lenses: PROGRESSIVE,
    direction: 'horizontal',
    rows: [
      { above: 0, end: 3.75, prism: 0.67 },
      { above: 3.75, end: MORE, mm: 1 },
    ],
  },
];

// 0.33 prism dioptres, or 1.0 mm in any direction: 2015 reference guide; 2010 by quotation of the measuring clause.
const ANSI_LENS_PRISM: readonly PrintedLensPrism[] = (['uncut', 'edged'] as const).map((supply) => ({
  lenses: ALL,
  supply,
  direction: 'any',
  rows: [[MORE, 0.33, 0]],
  orMm: 1,
}));

// Heights, tilt and near PD: 2010 summary and study pages; base curve and thickness: 1999 page and card decks;
// warp: state rule; the fitting point but for its height and the tilt of its marks: from memory.
const ANSI_PLAIN: Printed['plain'] = {
  segmentHeight: 1,
  segmentHeightDifference: 1,
  nearPd: 2.5,
  segmentTilt: 2,
  segmentSize: 0.5,
  segmentSizeDifference: 0.7,
  fittingHeight: 1,
  fittingHeightDifference: 1,
  fittingHorizontal: 1,
  markTilt: 2,
  baseCurve: 0.75,
  centreThickness: 0.3,
  warp: 1,
};

// ISO 8980-1:2004 as a trade poster prints it; the dash of the first row in the mounted table is from memory.
const isoDistance = (corner: number | null): PrintedPower => ({
  lenses: SINGLE,
  each: true,
  columns: [0.75, 4, 6, MORE],
  sphereToo: false,
  rows: [
    [3, 0.12, 0.09, 0.12, 0.18, corner],
    [6, 0.12, 0.12, 0.12, 0.18, 0.25],
    [9, 0.12, 0.12, 0.18, 0.18, 0.25],
    [12, 0.18, 0.12, 0.18, 0.25, 0.25],
    [20, 0.25, 0.18, 0.25, 0.25, 0.25],
    [MORE, 0.37, 0.25, 0.25, 0.37, 0.37],
  ],
});

// ISO 8980-2 and the second table of ISO 21987: from memory.
const ISO_PROGRESSIVE: PrintedPower = {
  lenses: PROGRESSIVE,
  each: true,
  columns: [0.75, 4, 6, MORE],
  sphereToo: true,
  rows: [
    [6, 0.12, 0.12, 0.18, 0.18, 0.25],
    [9, 0.18, 0.18, 0.18, 0.18, 0.25],
    [12, 0.18, 0.18, 0.18, 0.25, 0.25],
    [20, 0.25, 0.18, 0.25, 0.25, 0.25],
    [MORE, 0.37, 0.25, 0.25, 0.37, 0.37],
  ],
};

const isoUncutAxis = (first: number): PrintedAxis => ({
  lenses: ALL,
  firstEndOutside: false,
  rows: [
    [0.25, first],
    [0.5, 7],
    [0.75, 5],
    [1.5, 3],
    [2.5, 2],
    [MORE, 2],
  ],
});

// GB 10810.1-2005 and ISO 8980-1:2004, form B: from memory. One tenth and one twentieth of the power are added.
const isoLensPrism = (lenses: readonly LensClass[], supply: 'uncut' | 'glazed'): readonly PrintedLensPrism[] =>
  (
    [
      ['horizontal', 0.1],
      ['vertical', 0.05],
    ] as const
  ).map(([direction, perDioptre]) => ({
    lenses,
    supply,
    direction,
    rows: [
      [2, 0.25, perDioptre],
      [10, 0.37, perDioptre],
      [MORE, 0.5, perDioptre],
    ],
  }));

// ISO 21987, imbalance of mounted pairs: from memory.
const ISO_PAIR: readonly PrintedPair[] = [
  {
    lenses: SINGLE,
    direction: 'horizontal',
    rows: [
      { ordered: [0, 2], above: 0, end: 3.25, prism: 0.67 },
      { ordered: [0, 2], above: 3.25, end: MORE, prism: 0, shift: 2 },
      { ordered: [2, 10], above: 0, end: 3.25, prism: 1 },
      { ordered: [2, 10], above: 3.25, end: MORE, prism: 0.33, shift: 2 },
      { ordered: [10, MORE], above: 0, end: 3.25, prism: 1.25 },
      { ordered: [10, MORE], above: 3.25, end: MORE, prism: 0.58, shift: 2 },
    ],
  },
  {
    lenses: SINGLE,
    direction: 'vertical',
    rows: [
      { ordered: [0, 2], above: 0, end: 5, prism: 0.5 },
      { ordered: [0, 2], above: 5, end: MORE, prism: 0, shift: 1 },
      { ordered: [2, 10], above: 0, end: 5, prism: 0.75 },
      { ordered: [2, 10], above: 5, end: MORE, prism: 0.25, shift: 1 },
      { ordered: [10, MORE], above: 0, end: 5, prism: 1 },
      { ordered: [10, MORE], above: 5, end: MORE, prism: 0.5, shift: 1 },
    ],
  },
];

const UNCUT_PLAIN: Printed['plain'] = { segmentSize: 0.5, segmentSizeDifference: 0.7, centreThickness: 0.3 };

const ansi = (set: string): Printed => ({
  set,
  power: [ANSI_DISTANCE, ANSI_PROGRESSIVE],
  axis: [ANSI_AXIS],
  add: [ADD],
  pair: ANSI_PAIR,
  lensPrism: ANSI_LENS_PRISM,
  plain: ANSI_PLAIN,
});

export const PRINTED: readonly Printed[] = [
  ansi('z80.1-2015'),
  ansi('z80.1-2010'),
  {
    set: 'z80.1-1999',
    // One table for all lenses.
    power: [{ ...ANSI_DISTANCE, lenses: ALL }],
    // 1999 page.
    axis: [
      {
        lenses: ALL,
        firstEndOutside: true,
        rows: [
          [0.12, null],
          [0.37, 7],
          [0.75, 5],
          [1.5, 3],
          [MORE, 2],
        ],
      },
    ],
    add: [ADD],
    pair: ANSI_PAIR,
    lensPrism: [],
    plain: {
      segmentHeight: 1,
      nearPd: 2.5,
      segmentSize: 0.5,
      segmentSizeDifference: 0.7,
      fittingHeight: 1,
      baseCurve: 0.75,
      centreThickness: 0.3,
      warp: 1,
    },
  },
  {
    set: 'iso-21987-2017',
    power: [isoDistance(null), ISO_PROGRESSIVE],
    // United Kingdom study cards.
    axis: [
      {
        lenses: ALL,
        firstEndOutside: false,
        rows: [
          [0.125, null],
          [0.25, 16],
          [0.5, 9],
          [0.75, 6],
          [1.5, 4],
          [2.5, 3],
          [MORE, 2],
        ],
      },
    ],
    add: [ADD],
    pair: ISO_PAIR,
    lensPrism: isoLensPrism(PROGRESSIVE, 'glazed'),
    // Study cards; the differences of a pair and the thickness from memory. The segments count for each eye.
    plain: {
      segmentHeight: 1,
      segmentHeightDifference: 1,
      nearPd: 1,
      segmentTilt: 2,
      fittingHeight: 1,
      fittingHeightDifference: 1,
      fittingHorizontal: 1,
      markTilt: 2,
      centreThickness: 0.3,
    },
  },
  {
    set: 'iso-8980-2017',
    power: [isoDistance(0.25), ISO_PROGRESSIVE],
    axis: [isoUncutAxis(14)],
    add: [ADD],
    pair: [],
    lensPrism: isoLensPrism(ALL, 'uncut'),
    plain: UNCUT_PLAIN,
  },
  {
    set: 'iso-8980-2004',
    power: [isoDistance(0.25), ISO_PROGRESSIVE],
    axis: [isoUncutAxis(7)],
    add: [ADD],
    pair: [],
    lensPrism: isoLensPrism(ALL, 'uncut'),
    plain: UNCUT_PLAIN,
  },
  {
    // New Jersey Administrative Code 13:35-5.2, in the wording of the code.
    set: 'nj-13-35-5.2',
    power: [
      {
        lenses: ALL,
        each: true,
        columns: [MORE],
        sphereToo: true,
        rows: [
          [6, 0.12, 0.12],
          [12, '2 %', 0.12],
          [MORE, 0.25, 0.12],
        ],
      },
    ],
    axis: [
      {
        lenses: ALL,
        firstEndOutside: true,
        rows: [
          [0.12, null],
          [0.37, 3],
          [1, 2],
          [MORE, 1],
        ],
      },
    ],
    add: [],
    pair: (['horizontal', 'vertical'] as const).map((direction) => ({
      lenses: ALL,
      direction,
      rows: [{ above: 0, end: MORE, prism: 0.5 }],
    })),
    lensPrism: (['horizontal', 'vertical'] as const).map((direction) => ({
      lenses: ALL,
      supply: 'glazed',
      direction,
      rows: [[MORE, 0.25, 0]],
    })),
    plain: { segmentHeight: 0.5, nearPd: 0.5, fittingHeight: 0.5, fittingHorizontal: 0.5 },
  },
];
