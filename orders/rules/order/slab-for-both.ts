import type { Rule } from '../rule';

export const slabForBoth: Rule = {
  code: 'slab-for-both',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The same slab-off, or the same reverse slab, is ordered for both lenses.',
    why: 'Ground into both lenses it levels nothing: what matters is the difference between the two.',
    example: { wrong: 'slab-off 3.00', right: 'slab-off R 3.00' },
    source: 'opticaltraining.com continuing education, ABO, lens materials and coatings, page 16: one lens takes it.',
  },
  message: ({ reverse }) =>
    `For which lens is this ${reverse ? 'reverse slab' : 'slab-off'}? In both it levels nothing.`,
  needs: 'slab',
  check: ({ order: { lenses } }, report) => {
    const [right, left] = [lenses.R.slab, lenses.L.slab];
    if (!right || !left || right.value.reverse !== left.value.reverse) return;
    const isOne = right.place.line === left.place.line && right.place.start === left.place.start;
    report(left.place, { reverse: left.value.reverse }, isOne ? {} : { related: [right.place] });
  },
};
