/** Random orders with readings that scatter as a bench does, and slips that can be put into them. */
import fc from 'fast-check';
import { analyse, type Eye, type Finding, type Quantity } from '../../../orders';

export interface LensRead {
  readonly sphere: number;
  /** Zero or below. */
  readonly cylinder: number;
  readonly axis: number;
  readonly add: number;
  readonly height: number;
  readonly base: number;
  readonly width: number;
  /** Half of the distance PD, and of the near PD. */
  readonly pd: number;
  readonly near: number;
  /** Base up positive; in positive. */
  readonly up: number;
  readonly in: number;
}

export type Figure = keyof LensRead;
export type Pair = Readonly<Record<Eye, LensRead>>;
export type Kind = 'single-vision' | 'bifocal' | 'progressive';

export interface RandomJob {
  readonly kind: Kind;
  readonly ordered: Pair;
  /** Further lines of the order. */
  readonly lines: readonly string[];
}

const EYES: readonly Eye[] = ['R', 'L'];
const steps = (least: number, most: number, step: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(least / step), max: Math.round(most / step) }).map((count) => exactly(count * step));
export const exactly = (value: number): number => Math.round(value * 1e4) / 1e4;

/** An everyday pair: the lenses alike within a dioptre and a half or so, the axes often mirror images. */
export const anyJob: fc.Arbitrary<RandomJob> = fc.noBias(
  fc
    .record({
      kind: fc.constantFrom<Kind>('single-vision', 'bifocal', 'progressive'),
      sphere: steps(-8, 6, 0.25),
      apart: steps(-1.5, 1.5, 0.25),
      cylinders: fc.tuple(steps(-3, 0, 0.25), steps(-3, 0, 0.25)),
      axes: fc.tuple(steps(1, 180, 1), steps(1, 180, 1)),
      isMirrored: fc.boolean(),
      add: steps(1, 2.75, 0.25),
      pd: steps(56, 70, 1),
      turnedIn: steps(2, 4, 1),
      height: steps(16, 22, 1),
      lower: fc.constantFrom(0, 0, 0, 1, 2),
      base: fc.constantFrom(2, 4, 6),
      in: fc.constantFrom(0, 0, 0, 1, 2),
      up: fc.constantFrom(0, 0, 0, 1),
      index: fc.constantFrom(1.5, 1.6, 1.67),
    })
    .map((one): RandomJob => {
      const { add, base } = one;
      const mirrored = ((180 - one.axes[0] + 179) % 180) + 1;
      const shared = { add, base, width: 28, pd: one.pd / 2, near: (one.pd - one.turnedIn) / 2, in: one.in };
      const isPlain = one.kind === 'single-vision';
      return {
        kind: one.kind,
        ordered: {
          R: {
            ...shared,
            sphere: one.sphere,
            cylinder: one.cylinders[0],
            axis: one.axes[0],
            height: one.height,
            up: isPlain ? one.up : 0,
          },
          L: {
            ...shared,
            sphere: exactly(one.sphere + one.apart),
            cylinder: one.cylinders[1],
            axis: one.isMirrored ? mirrored : one.axes[1],
            height: one.height - one.lower,
            up: isPlain ? -one.up : 0,
          },
        },
        lines: [`lens index ${one.index}`],
      };
    }),
);

const dioptres = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(2)}`;

const lensText = ({ sphere, cylinder, axis }: LensRead): string =>
  Math.abs(cylinder) < 0.005
    ? `${dioptres(sphere)} DS`
    : `${dioptres(sphere)} ${dioptres(cylinder)} x ${String(((Math.round(axis) + 719) % 180) + 1).padStart(3, '0')}`;

const prismText = (lens: LensRead): string =>
  `${Math.abs(lens.in).toFixed(2)} ${lens.in < 0 ? 'BO' : 'BI'} ${Math.abs(lens.up).toFixed(2)} ${lens.up < 0 ? 'BD' : 'BU'}`;

const tenths = (value: number): string => String(Math.round(value * 10) / 10);
const both = (word: string, { R, L }: Pair, of: (lens: LensRead) => string): string => `${word} R ${of(R)} L ${of(L)}`;

/** Everything a bench reads of such a pair; the same lines ask for it in the order. */
function linesOf(kind: Kind, pair: Pair, more: readonly string[]): readonly string[] {
  const near = kind === 'bifocal' ? ` near R ${tenths(pair.R.near)} L ${tenths(pair.L.near)}` : '';
  return [
    ...EYES.map((eye) => `${eye} ${lensText(pair[eye])}`),
    ...(kind === 'single-vision' ? [] : [both('add', pair, ({ add }) => dioptres(add))]),
    `${both('pd', pair, ({ pd }) => tenths(pd))}${near}`,
    both('height', pair, ({ height }) => tenths(height)),
    both('prism', pair, prismText),
    both('base-curve', pair, ({ base }) => base.toFixed(2)),
    ...more,
  ];
}

const DESIGNS: Readonly<Record<Kind, string>> = {
  'single-vision': 'design single-vision',
  bifocal: 'design bifocal flat-top 28',
  progressive: 'design progressive',
};

/** The job as text, with what was read of it. */
export function jobText({ kind, ordered, lines }: RandomJob, read: Pair, set = 'z80.1-2015'): string {
  const reading = kind === 'bifocal' ? [both('segment', read, ({ width }) => width.toFixed(1))] : [];
  return [
    `standard ${set}`,
    // Read by an instrument that shows cylinders in one form, so that no lines and no forms can be mixed up.
    'instrument AUTO-1',
    '  kind automatic focimeter',
    'order C-1',
    ...linesOf(kind, ordered, [DESIGNS[kind], 'supply glazed', ...lines]),
    'reading 2026-11-24 with AUTO-1',
    ...linesOf(kind, read, reading),
  ].join('\n');
}

export interface Outcome {
  readonly verdict: string;
  /** Of the family of causes, as they are told. */
  readonly causes: readonly Finding[];
  readonly failed: readonly Quantity[];
}

export function outcomeOf(text: string, isCause: (finding: Finding) => boolean): Outcome {
  const block = analyse(text).blocks.find(({ evaluation }) => evaluation);
  if (!block?.evaluation) throw new Error(`no order in ${text}`);
  const { verdict, measures } = block.evaluation;
  return {
    verdict,
    causes: block.findings.filter(isCause),
    failed: measures.filter(({ outcome }) => outcome === 'fail').map(({ quantity }) => quantity),
  };
}

/** The limit of each figure of a lens by ANSI Z80.1-2015: the rows of the printed guide that such pairs meet. */
export function limitOf({ kind, ordered }: RandomJob, eye: Eye, figure: Figure): number {
  const { sphere, cylinder } = ordered[eye];
  const strongest = Math.max(Math.abs(sphere), Math.abs(sphere + cylinder));
  const isProgressive = kind === 'progressive';
  switch (figure) {
    case 'sphere':
      return isProgressive ? (strongest > 8 ? 0.02 * strongest : 0.16) : strongest > 6.5 ? 0.02 * strongest : 0.13;
    case 'cylinder': {
      const size = Math.abs(cylinder);
      if (isProgressive) return size <= 2 ? 0.16 : 0.18;
      return size <= 2 ? 0.13 : 0.15;
    }
    case 'axis': {
      const size = Math.abs(cylinder);
      return size <= 0.25 ? 14 : size <= 0.5 ? 7 : size <= 0.75 ? 5 : size <= 1.5 ? 3 : 2;
    }
    case 'add':
      return 0.12;
    case 'height':
    case 'pd':
      return 1;
    case 'near':
      return 1.25;
    case 'base':
      return 0.75;
    case 'width':
      return 0.5;
    default:
      return 0.33;
  }
}

/** How much of its limit each figure scatters on a good bench; figures that share a limit share it out. */
const SCATTER: Readonly<Record<Figure, number>> = {
  sphere: 0.25,
  cylinder: 0.25,
  axis: 0.5,
  add: 0.5,
  height: 0.25,
  pd: 0.2,
  near: 0.25,
  base: 0.15,
  width: 0.25,
  up: 0.1,
  in: 0.1,
};

const FIGURES = Object.keys(SCATTER) as readonly Figure[];

/** For each figure of each lens a number from -1 to 1. */
export type Noise = Readonly<Record<Eye, Readonly<Record<Figure, number>>>>;

const anyShare = fc.double({ min: -1, max: 1, noNaN: true });
const anyLens = fc.record(Object.fromEntries(FIGURES.map((figure) => [figure, anyShare]))) as fc.Arbitrary<
  Readonly<Record<Figure, number>>
>;
export const anyNoise: fc.Arbitrary<Noise> = fc.noBias(fc.record({ R: anyLens, L: anyLens }));

/** What a good bench reads on a good pair. */
export function scattered(job: RandomJob, noise: Noise): Pair {
  const lens = (eye: Eye): LensRead =>
    Object.fromEntries(
      FIGURES.map((figure) => [
        figure,
        job.ordered[eye][figure] + noise[eye][figure] * SCATTER[figure] * limitOf(job, eye, figure),
      ]),
    ) as unknown as LensRead;
  return { R: clean(lens('R'), job.ordered.R), L: clean(lens('L'), job.ordered.L) };
}

/** A sphere is read as one, and a cylinder is read with some. */
const clean = (read: LensRead, ordered: LensRead): LensRead => ({
  ...read,
  cylinder: ordered.cylinder === 0 ? 0 : Math.min(read.cylinder, -0.05),
  in: ordered.in === 0 && Math.abs(read.in) < 0.01 ? 0 : read.in,
});

/** A figure put off by so many times its limit. */
export const off = (job: RandomJob, read: Pair, eye: Eye, figure: Figure, times: number): Pair => ({
  ...read,
  [eye]: { ...read[eye], [figure]: job.ordered[eye][figure] + times * limitOf(job, eye, figure) },
});
