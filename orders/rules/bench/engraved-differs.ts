import { isLess, tidy } from '../../exact';
import { addLimit } from '../../limits';
import { classOfLens } from '../../measures/measure';
import { EYES } from '../../model';
import { signed } from '../../words';
import type { Rule } from '../rule';

export const engravedDiffers: Rule = {
  code: 'engraved-differs',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A lens is marked with an add that is not the ordered one, while the add was measured as well and is judged by that.',
    why: 'A lens that says +2.50 of itself and measures +2.00 is one of two lenses, and nobody can say which: the mark was read on another lens, or the drum was. Read both again on the lens in the frame. Where the mark stays, another blank was taken.',
    example: {
      wrong: 'add R +2.00 L +2.00\nadd R +2.50 engraved',
      right: 'add R +2.00 L +2.00\nadd R +2.00 engraved',
    },
    source: 'Common practice, no source. The limit is that of the add in the tolerance set that the order names.',
  },
  message: ({ lens, marked, ordered, read }) =>
    `${lens} is marked ${signed(Number(marked))}, ordered ${signed(Number(ordered))}, and the add measures ${signed(Number(read))}. Look at the mark and the blank again.`,
  check: ({ order, evaluation: { values, set } }, report) => {
    if (!set) return;
    for (const eye of EYES) {
      const [marked, read] = [values.engravedAdd[eye], values.add[eye]];
      const lens = order.lenses[eye];
      if (!marked || !read || !lens.add) continue;
      const ordered = [lens.add.value, ...(lens.verification?.add ? [lens.verification.add.value] : [])];
      const limit = addLimit(set, classOfLens(lens), lens.add.value)?.amount ?? LEAST;
      const isOther = ordered.every((add) => isLess(limit, tidy(Math.abs(marked.value - add))));
      if (!isOther) continue;
      const data = { lens: eye, marked: marked.value, ordered: lens.add.value, read: read.value };
      report(marked.place, data, { eye, related: [lens.add.place] });
    }
  },
};

/** Marks come in quarters; less than an eighth is no other mark, dioptres. Common practice, no source. */
const LEAST = 0.12;
