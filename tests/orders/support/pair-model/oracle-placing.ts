/** How a mounted pair is placed before the eyes: what an oracle says of it. */
import { along, type Both, both, EYES, type Eye, inwards, outAndUp, prismOf, type Vector } from './lens';
import { pairRow, printedSet } from './limits';
import { type Check, classOf } from './oracle';
import { isPlacedByCentres, type Known, type Pair } from './pair';

export interface Placed {
  readonly checks: readonly Check[];
  readonly missing: readonly string[];
  readonly isOnEdge: boolean;
}

const DIRECTIONS = ['horizontal', 'vertical'] as const;
type Direction = (typeof DIRECTIONS)[number];

/** The larger of both ordered lenses, in power and in ordered prism; their accounts name the stronger lens, or nothing. */
const larger = (of: (eye: Eye) => number): number => Math.max(...EYES.map((eye) => Math.abs(of(eye))));

const partOf = (direction: Direction, { right, up }: Vector): number => (direction === 'horizontal' ? right : up);

/** Base in counts over both eyes, base up as right less left: both are right less left in the examiner's frame. */
const imbalance = (direction: Direction, { R, L }: Both<Vector>): number => partOf(direction, R) - partOf(direction, L);

/**
 * How far each lens may stand from its place by what is known. Where only a total or a difference was read, the whole error
 * may be in either lens, and the worse of both counts: the stricter reading for the wearer.
 */
export function waysToStand({ made, hasHeights }: Pair, known: Known): readonly Both<{ out: number; up: number }>[] {
  const out = made.R.out + made.L.out;
  const up = made.R.up - made.L.up;
  const across: readonly Both<number>[] =
    known.across === 'each'
      ? [both((eye) => made[eye].out)]
      : known.across === 'total'
        ? [
            { R: out, L: 0 },
            { R: 0, L: out },
          ]
        : [{ R: 0, L: 0 }];
  const upwards: readonly Both<number>[] =
    known.up === 'none'
      ? [{ R: 0, L: 0 }]
      : known.up === 'each' || hasHeights
        ? [both((eye) => made[eye].up)]
        : [
            { R: up, L: 0 },
            { R: 0, L: -up },
          ];
  return across.flatMap((a) => upwards.map((u) => both((eye) => ({ out: a[eye], up: u[eye] }))));
}

/** Unwanted prism before each eye, for every way in which the pair may stand. */
export function unwantedPrisms(pair: Pair, known: Known): readonly Both<Vector>[] {
  if (!isPlacedByCentres(pair)) return [both((eye) => pair.made[eye].prism)];
  return waysToStand(pair, known).map((stands) =>
    both((eye) => prismOf(pair.made[eye].power, outAndUp(eye, stands[eye].out, stands[eye].up))),
  );
}

/** The directions whose row is in millimetres for such a pair. */
export const decidedInMillimetres = (pair: Pair): readonly Direction[] =>
  DIRECTIONS.filter((direction) => rowOf(pair, direction).row?.mm != null);

function rowOf(pair: Pair, direction: Direction): { readonly row: ReturnType<typeof pairRow>; readonly power: number } {
  const power = larger((eye) => along(pair.ordered[eye].power, direction));
  const prism = larger((eye) => partOf(direction, pair.ordered[eye].prism));
  return { row: pairRow(printedSet(pair.set), classOf(pair), direction, power, prism), power };
}

export function placingChecks(pair: Pair, known: Known): Placed {
  const [checks, missing]: [Check[], string[]] = [[], []];
  let isOnEdge = false;
  for (const direction of DIRECTIONS) {
    const { row, power } = rowOf(pair, direction);
    if (!row) continue;
    isOnEdge ||= row.isOnEdge;
    if ((direction === 'horizontal' ? known.across : known.up) === 'none') missing.push(direction);
    else if (row.mm === null) {
      checks.push(...inPrism(pair, known, direction, row.prism as number));
      if (direction === 'horizontal') checks.push(...ofUnlimitedMarks(pair, row.prism as number));
    } else if (isPlacedByCentres(pair)) checks.push(inMillimetres(pair, direction, row.mm));
    else checks.push(...ofProgressive(pair, direction, row.mm, power));
  }
  return { checks, missing, isOnEdge };
}

const inPrism = (pair: Pair, known: Known, direction: Direction, limit: number): readonly Check[] =>
  unwantedPrisms(pair, known).map((prisms) => ({
    of: 'prism',
    what: `pair, ${direction}`,
    off: Math.abs(imbalance(direction, prisms)),
    limit,
  }));

/**
 * A row in millimetres speaks of the distance between the centres and of the difference between their heights, as printed:
 * “of the specified distance interpupillary distance”, “difference in height”. So how the error lies before each eye does
 * not count, and a total says all.
 */
const inMillimetres = ({ made: { R, L } }: Pair, direction: Direction, limit: number): Check => ({
  of: 'centres',
  what: `centres, ${direction}`,
  off: Math.abs(direction === 'horizontal' ? R.out + L.out : R.up - L.up),
  limit,
});

/**
 * The account of the 1999 edition has no place across for the marks of weak progressives. Nothing else would keep a lens off
 * that stands beside its eye, so it is held to the prism that it makes there: the stricter reading for the wearer.
 */
function ofUnlimitedMarks(pair: Pair, limit: number): readonly Check[] {
  if (isPlacedByCentres(pair) || printedSet(pair.set).plain.fittingHorizontal !== undefined) return [];
  const prisms = both((eye) => prismOf(pair.made[eye].power, outAndUp(eye, pair.made[eye].out, 0)));
  return [{ of: 'prism', what: 'marks beside the eyes', off: Math.abs(imbalance('horizontal', prisms)), limit }];
}

/**
 * A progressive has a mark of its own, and its prism there stays what it is when the lens stands elsewhere. So two things
 * are judged: where the mark stands before each eye, in the printed millimetres, and the prism at it. What prism a row in
 * millimetres allows is not printed; it is taken to be what that shift makes in the stronger lens, horizontally of each eye
 * as the row counts, vertically of the pair, since two lenses ground alike do not part the eyes.
 */
function ofProgressive({ made }: Pair, direction: Direction, mm: number, power: number): readonly Check[] {
  const limit = (mm / 10) * power;
  if (direction === 'vertical') {
    const off = Math.abs(made.R.prism.up - made.L.prism.up);
    return [{ of: 'prism', what: 'marks, vertical', off, limit }];
  }
  return EYES.flatMap((eye): Check[] => [
    { of: 'mm', what: `mark ${eye}`, off: Math.abs(made[eye].out), limit: mm },
    { of: 'prism', what: `mark ${eye}, horizontal`, off: Math.abs(inwards(eye, made[eye].prism)), limit },
  ]);
}
