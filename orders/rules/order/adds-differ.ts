import { isLess, isSame, tidy } from '../../exact';
import { signed } from '../../words';
import type { Rule } from '../rule';

export const addsDiffer: Rule = {
  code: 'adds-differ',
  family: 'order',
  level: 'info',
  page: {
    checks: 'The two eyes have different adds.',
    levels: 'An info; a warning where they are more than 0.50 D apart.',
    why: 'Both eyes read at the same distance, so their adds are nearly always alike. Unequal ones are prescribed now and then, and are written by mistake more often.',
    example: { wrong: 'add R +2.00 L +2.25', right: 'add +2.00' },
    source: 'Common practice, no source; so is the bound of 0.50 D.',
  },
  message: ({ right, left }) => `The adds differ: R ${signed(Number(right))}, L ${signed(Number(left))}.`,
  check: ({ order: { lenses } }, report) => {
    const [right, left] = [lenses.R.add, lenses.L.add];
    if (!right || !left || isSame(right.value, left.value)) return;
    const level = isLess(MOST, tidy(Math.abs(right.value - left.value))) ? 'warning' : 'info';
    report(left.place, { right: right.value, left: left.value }, { related: [right.place], level });
  },
};

/** Dioptres; more is hardly ever prescribed. Common practice, no source. */
const MOST = 0.5;
