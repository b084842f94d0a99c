import { sphericalEquivalent } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess } from '../../exact';
import type { WrittenPower } from '../../model';
import { powerInWords } from '../../words';
import type { Rule } from '../rule';

/** Smaller powers change their sign from eye to eye quite often. */
const LEAST = 1;

export const oppositeSigns: Rule = {
  code: 'opposite-signs',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'One lens is plus and the other minus, both by a dioptre or more in the mean of their meridians.',
    why: 'Such eyes exist and are rare; a sign lost or copied wrongly is common. A wrong sign on 2.00 moves the lens by 4.00 dioptres.',
    example: { wrong: 'L +4.25 -1.00 x 168', right: 'L -4.25 -1.00 x 168' },
    source:
      'The power sign was 11 % of office errors in a laboratory survey (Pacific University thesis, 1992). The threshold is ours.',
  },
  message: ({ right, left }) => `One lens is plus, the other minus: R ${right}, L ${left}. Is the sign right?`,
  check: ({ order: { lenses } }, report) => {
    const [right, left] = [lenses.R.written, lenses.L.written];
    if (!right || !left || lenses.R.role === 'balance' || lenses.L.role === 'balance') return;
    const [first, second] = [mean(right), mean(left)];
    if (first === null || second === null || first * second >= 0) return;
    if (isLess(Math.abs(first), LEAST) || isLess(Math.abs(second), LEAST)) return;
    report(
      left.place,
      { right: powerInWords(right.value), left: powerInWords(left.value) },
      { related: [right.place] },
    );
  },
};

const mean = ({ value }: WrittenPower): number | null => attempt(() => sphericalEquivalent(value));
