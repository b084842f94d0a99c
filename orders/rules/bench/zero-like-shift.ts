import type { Power } from '../../../optics';
import { isLess, tidy } from '../../exact';
import { indicationLimit } from '../../focimeter-limits';
import { powerAtReference, powerRead } from '../../measures/power';
import type { OrderedLens, Reading } from '../../model';
import type { Read } from '../../reduce';
import { signed } from '../../words';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { whileItCounts } from './counting';

export const zeroLikeShift: Rule = {
  code: 'zero-like-shift',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'All powers of both lenses are off by one and the same amount, in both meridians, by more than 0.06 D and no more than 0.50 D, and neither the reading nor the instrument states a zero. Two spheres, and single eighths on a drum that shows no finer, agree by chance too easily; of those it is told, as information, only where a power fails.',
    why: 'Two lenses are seldom wrong by the same amount in every meridian; an eyepiece or a drum that is not at zero makes just that. Look at the zero with nothing on the stop, write it into the reading, and nothing may be left of the error. Adds are not touched by it. A shift of more than 0.50 D is no zero that anybody overlooks: the pair is another one, or the powers were.',
    example: {
      wrong: 'R -4.25 -0.75 x 022\nL -4.00 -1.00 x 168',
      right: 'R -4.50 -0.75 x 022\nL -4.25 -1.00 x 168',
    },
    source:
      '20/20 magazine, 2005, “quality assurance with your lensometer”: zero, eyepiece and order of the lines. The bound of 0.50 D: common practice, no source.',
  },
  message: ({ shift, name }) =>
    `Every power of both lenses reads ${signed(Number(shift))} D beside the order. Was the zero of ${name ?? 'the instrument'} looked at? A drum that is off shows just that.`,
  check: (subject, report) => {
    const { order, evaluation } = subject;
    const right = shiftsOf(subject, order.lenses.R);
    const left = right && shiftsOf(subject, order.lenses.L);
    if (!left || right.read.reading !== left.read.reading) return;
    const reading = order.readings[right.read.reading] as Reading;
    if (isZeroKnown(reading, right.read) || right.read.instrument !== left.read.instrument) return;
    const all = [...right.shifts, ...left.shifts];
    const shift = tidy(all.reduce((sum, one) => sum + one, 0) / all.length);
    const isOne = all.every((one) => !isLess(ALIKE, Math.abs(one - shift)));
    if (isLess(MOST_ZERO, Math.abs(shift))) return;
    if (!isOne || !isLess(indicationLimit(0)?.limit ?? 0, Math.abs(shift))) return;
    const isByChance = all.length < ENOUGH || (right.read.coarse && !isLess(EIGHTH, Math.abs(shift)));
    const fails = evaluation.measures.some(({ quantity, outcome }) => quantity === 'power' && outcome === 'fail');
    if (isByChance && !fails) return;
    const level = isByChance ? 'info' : whileItCounts(evaluation, right.read.reading, 'warning');
    const name = right.read.instrument?.name ?? reading.with;
    report(right.read.place, { shift, name }, { related: [left.read.place], level });
  },
};

/** How far figures that are shifted alike may lie from their mean, dioptres: a display in hundredths may flicker by that. */
const ALIKE = 0.02;
/** Independent figures from which on agreement is no chance: two lenses, one of them with a cylinder. */
const ENOUGH = 3;

/** A drum further off than that is seen before a lens is on the stop, dioptres. Common practice, no source. */
const MOST_ZERO = 0.5;
/** Dioptres. */
const EIGHTH = 0.125;

interface Shifted {
  readonly read: Read<Power>;
  /** Of the sphere, and of the other meridian where there is one; dioptres. */
  readonly shifts: readonly number[];
}

function shiftsOf({ order, evaluation }: Subject, lens: OrderedLens): Shifted | null {
  const ordered = lens.role === 'made' ? powerAtReference(order, lens) : null;
  const read = powerRead(evaluation.values, lens);
  if (!ordered || ordered === 'unstated' || !read) return null;
  const sphere = tidy(read.value.sphere - ordered.sphere);
  if (ordered.cylinder === 0 && read.value.cylinder === 0) return { read, shifts: [sphere] };
  return { read, shifts: [sphere, tidy(sphere + read.value.cylinder - ordered.cylinder)] };
}

function isZeroKnown({ zero, measurements }: Reading, { instrument }: Read<Power>): boolean {
  if (zero || instrument?.zero != null) return true;
  return measurements.some((one) => one.quantity === 'power' && one.corrected);
}
