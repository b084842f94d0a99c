import type { Eye } from '../../../grammar';
import { drumFromFront } from '../../computed';
import { isLess, isSame, tidy } from '../../exact';
import { powerAtReference } from '../../measures/power';
import { type Order, otherEye, type Reading, type TypedPower } from '../../model';
import { signed } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';

export const addLineMismatch: Rule = {
  code: 'add-line-mismatch',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The first drum position of an add stands at none of the lines of this lens: neither at those read in the same reading nor at those of the order, from either surface.',
    why: 'The add is the way of one set of lines from the distance portion into the segment. A position that is no line of this lens was taken off the other lens, or is a cylinder, or a mean, and the difference is no add.',
    example: { wrong: 'add R -3.25 -> -1.25 front-vertex', right: 'add R -4.50 -> -2.50 front-vertex' },
    source:
      'How-to page “measuring spectacles on a lensometer” (86m.net), which takes the near wide lines less the cylinder; the same lines in both portions from memory of Brooks & Borish.',
  },
  message: ({ from, lines, like }) => {
    const own = (lines as readonly number[]).map(signed).join(' and ');
    const guess = like === null ? '' : ` It looks like ${LIKE[like as Like]}.`;
    const where =
      (lines as readonly number[]).length > 1 ? `The lines of this lens stand at ${own}` : `This lens stands at ${own}`;
    return `${where}, not at ${signed(Number(from))}.${guess}`;
  },
  needs: 'difference',
  check: ({ order, evaluation }, report) => {
    for (const [index, reading] of order.readings.entries()) {
      for (const one of reading.measurements) {
        if (one.quantity !== 'add' || one.value.kind !== 'drum' || one.eye === null) continue;
        const { from } = one.value;
        const lines = linesFromBack(order, reading, one.eye);
        const isLine = (line: number): boolean => fits(from, line);
        if (lines.length === 0 || lines.some(isLine) || linesFromFront(order, one.eye).some(isLine)) continue;
        const own = linesRead(reading, one.eye) ?? linesOrdered(order, one.eye) ?? [];
        const like = likenessOf(from, own, linesFromBack(order, reading, otherEye(one.eye)));
        const level = whileItCounts(evaluation, index, 'warning');
        report(one.place, { from, lines: distinct(own), like }, { eye: one.eye, level });
      }
    }
  },
};

type Like = 'other-lens' | 'cylinder' | 'mean' | 'sign';

const LIKE: Readonly<Record<Like, string>> = {
  'other-lens': 'a line of the other lens',
  cylinder: 'the cylinder, which is no position of the drum',
  mean: 'the spherical equivalent, at which no lines are sharp',
  sign: 'the same line with the other sign',
};

/** As the drum shows them, thin lines first: those read in the same reading and those of the order. */
const linesFromBack = (order: Order, reading: Reading, eye: Eye): readonly number[] => [
  ...(linesRead(reading, eye) ?? []),
  ...(linesOrdered(order, eye) ?? []),
];

/** Only where the order says enough of the body of the lens. */
function linesFromFront(order: Order, eye: Eye): readonly number[] {
  const front = drumFromFront(order, eye)?.values;
  return [front?.distanceThin?.value, front?.distanceWide?.value].filter((one) => typeof one === 'number');
}

function linesRead({ measurements }: Reading, eye: Eye): readonly number[] | null {
  const read = measurements.findLast((one) => one.quantity === 'power' && one.eye === eye && one.at !== 'near-point');
  return read?.quantity === 'power' ? positionsOf(read.value) : null;
}

function linesOrdered(order: Order, eye: Eye): readonly number[] | null {
  const power = powerAtReference(order, order.lenses[eye]);
  return power && power !== 'unstated' ? positionsOf(power) : null;
}

const positionsOf = ({ sphere, cylinder }: Pick<TypedPower, 'sphere' | 'cylinder'>): readonly number[] => [
  sphere,
  tidy(sphere + cylinder),
];

/**
 * Two quarters apart is a slip of reading at most; strong lenses show another figure from the front than from the back,
 * by up to a fourteenth of their power with usual curves and thicknesses.
 */
const fits = (from: number, line: number): boolean => !isLess(NEAR + Math.abs(line) * SHARE, Math.abs(from - line));

const NEAR = 0.37;
const SHARE = 0.07;
/** How close a figure has to be to be called like another, dioptres. */
const CLOSE = 0.06;

function likenessOf(from: number, own: readonly number[], other: readonly number[]): Like | null {
  const [thin = 0, wide = thin] = own;
  const isLike = (figure: number): boolean => !isLess(CLOSE, Math.abs(from - figure));
  if (other.some(isLike)) return 'other-lens';
  if (!isSame(thin, wide) && isLike(Math.abs(wide - thin) * Math.sign(from))) return 'cylinder';
  if (!isSame(thin, wide) && isLike((thin + wide) / 2)) return 'mean';
  return own.some((line) => isLike(-line)) ? 'sign' : null;
}

const distinct = (lines: readonly number[]): readonly number[] => [...new Set(lines)];
