import type { Eye } from '../../../grammar';
import type { PrismVector } from '../../../optics';
import { isLess, tidy } from '../../exact';
import { prismRead, unsaidThinning, unwantedIn } from '../../measures/wanted-prism';

import type { Read } from '../../reduce';
import { prismInWords } from '../../words';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { whileItCounts } from './counting';

/** Prism dioptres that both lenses may have in common before it is told. */
const COMMON = 1;

export const prismInBoth: Rule = {
  code: 'prism-in-both',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Both lenses show more than 1 prism dioptre towards the same side that nobody ordered: both up, both down, or both to the right or left.',
    why: 'Between the eyes nothing is left of it, so the pair passes; but the wearer looks through all of it and holds the head up, down or aside. Optical centres that were never placed do this in strong lenses: 9 mm too low in +13.50 is 12 prism dioptres in each. Equal thinning of progressives and full-width segments is left alone.',
    example: { wrong: 'prism R 2.00 BD L 2.00 BD', right: 'prism R 0.25 BD L 0' },
    source: 'ProFile ANZ, “heights matter beyond the multifocal”; the 1 prism dioptre is common practice, no source.',
  },
  message: ({ R, L }) =>
    `Both lenses show the same unwanted prism: R ${prismInWords(R as PrismVector, 'R')}, L ${prismInWords(L as PrismVector, 'L')}. The pair is balanced, and the wearer looks through it all the same.`,
  check: (subject, report) => {
    const right = unwantedRead(subject, 'R');
    const left = right && unwantedRead(subject, 'L');
    if (!left) return;
    const thinned = unsaidThinning(subject.order, right.read.value, left.read.value);
    const besides = ({ unwanted }: Unwanted): PrismVector => ({
      right: tidy(unwanted.right),
      up: tidy(unwanted.up - thinned),
    });
    const [R, L] = [besides(right), besides(left)];
    if (!isCommon(R.up, L.up) && !isCommon(R.right, L.right)) return;
    const level = whileItCounts(subject.evaluation, right.read.reading, 'warning');
    report(right.read.place, { R, L }, { related: [left.read.place], level });
  },
};

const isCommon = (first: number, second: number): boolean =>
  first * second > 0 && isLess(COMMON, Math.min(Math.abs(first), Math.abs(second)));

interface Unwanted {
  readonly read: Read<PrismVector>;
  readonly unwanted: PrismVector;
}

function unwantedRead({ order, evaluation }: Subject, eye: Eye): Unwanted | null {
  const lens = order.lenses[eye];
  const read = lens.role === 'made' ? prismRead(order, evaluation.values, eye) : null;
  return read && { read, unwanted: unwantedIn(read.value, order, eye) };
}
