import { isLess, tidy } from '../../exact';
import type { Rule } from '../rule';

export const heightsApart: Rule = {
  code: 'heights-apart',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'The ordered heights of the two eyes are more than 3 mm apart.',
    why: 'Faces are uneven by a millimetre or two. A greater difference is mostly one height measured while the frame sat crooked, or a slip of a figure; made as ordered, the segments are seen to be uneven, and strong lenses make vertical prism.',
    example: { wrong: 'height R 17 L 21', right: 'height R 17 L 18' },
    source: 'The bound is common practice, no source.',
  },
  message: ({ right, left, apart }) =>
    `Heights R ${right} and L ${left} are ${apart} mm apart. Measure both again with the frame level.`,
  check: ({ order: { lenses } }, report) => {
    const { R, L } = lenses;
    if (!R.height || !L.height || R.role === 'absent' || L.role === 'absent') return;
    const apart = tidy(Math.abs(R.height.value - L.height.value));
    if (!isLess(MOST, apart)) return;
    report(L.height.place, { right: R.height.value, left: L.height.value, apart }, { related: [R.height.place] });
  },
};

/** Millimetres. Common practice, no source. */
const MOST = 3;
