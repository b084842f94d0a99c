import { isLess } from '../../exact';
import { powerInWords, signed } from '../../words';
import type { Rule } from '../rule';
import { powersApart } from './difference';
import { lensesOf } from './lenses';

/** An eighth: about what a new lens may be off. */
const ALIKE = 0.125;

export const keptDiffers: Rule = {
  code: 'kept-differs',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'The lens that stays in the frame differs by more than an eighth from the power that this eye has now.',
    why: 'The new lens may be perfect and the pair still wrong: a right lens of an older prescription was left in, one dioptre and a quarter away from the eye.',
    example: { wrong: 'kept L -2.00 -0.25 x 015', right: 'kept L -4.25 -1.00 x 168' },
    source: '20/20 L&T, “ordering a single lens”. The bound of an eighth is ours.',
  },
  message: ({ what, kept, wanted }) =>
    what === 'add'
      ? `The kept lens has an add of ${kept}; the order says ${wanted}.`
      : `The kept lens is ${kept}; this eye needs ${wanted}.`,
  needs: 'other-power',
  check: ({ order }, report) => {
    for (const { eye, role, kept, written, add } of lensesOf(order)) {
      if (role !== 'kept' || !kept) continue;
      if (kept.power && written && isLess(ALIKE, powersApart(kept.power.value, written.value) ?? 0)) {
        const data = { what: 'power', kept: powerInWords(kept.power.value), wanted: powerInWords(written.value) };
        report(kept.power.place, data, { eye, related: [written.place] });
      }
      if (kept.add && add && isLess(ALIKE, Math.abs(kept.add.value - add.value))) {
        const data = { what: 'add', kept: signed(kept.add.value), wanted: signed(add.value) };
        report(kept.add.place, data, { eye, related: [add.place] });
      }
    }
  },
};
