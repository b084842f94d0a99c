import { isSame } from '../../exact';
import { signed } from '../../words';
import type { Rule } from '../rule';

export const addsDiffer: Rule = {
  code: 'adds-differ',
  family: 'order',
  level: 'info',
  page: {
    checks: 'The two eyes have different adds.',
    why: 'Both eyes read at the same distance, so their adds are nearly always alike. Unequal ones are prescribed now and then, and are written by mistake more often.',
    example: { wrong: 'add R +2.00 L +2.25', right: 'add +2.00' },
    source: 'Common practice, no source.',
  },
  message: ({ right, left }) => `The adds differ: R ${signed(Number(right))}, L ${signed(Number(left))}.`,
  check: ({ order: { lenses } }, report) => {
    const [right, left] = [lenses.R.add, lenses.L.add];
    if (!right || !left || isSame(right.value, left.value)) return;
    report(left.place, { right: right.value, left: left.value }, { related: [right.place] });
  },
};
