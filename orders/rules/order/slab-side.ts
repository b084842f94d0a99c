import type { Eye } from '../../../grammar';
import { isLess } from '../../exact';
import { amountInWords } from '../../words';
import { type Rule, replace, typed } from '../rule';
import { lensesOf } from './lenses';
import { slabFor } from './near-imbalance';

/** Below this there is hardly anything to level, and no side is the wrong one. */
const LEAST = 0.5;

export const slabSide: Rule = {
  code: 'slab-side',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'A slab-off stands on the lens that is more plus along the vertical, or a reverse slab on the one that is more minus.',
    why: 'On the wrong lens it doubles the prism it should take away. A slab-off gives base up, and belongs on the most minus or least plus lens; a reverse slab gives base down on the other.',
    example: { wrong: 'slab-off L 3.50', right: 'slab-off R 3.50' },
    fix: 'Writes the other lens.',
    source: 'opticaltraining.com continuing education, ABO, lens materials and coatings, page 16.',
  },
  message: ({ reverse, expected, amount, level }) =>
    `A ${reverse ? 'reverse slab' : 'slab-off'} of this pair belongs on ${expected}: ${amountInWords(Number(amount), 'prism')} are to be levelled ${amountInWords(Number(level), 'mm')} down.`,
  fixes: (site) => {
    const { expected } = site.finding.data;
    const text = typed(site).replace(/^[^\s\d]+/, String(expected as Eye));
    return text === typed(site) ? [] : [replace(site, `Write ${text}`, text, false)];
  },
  needs: 'slab',
  check: ({ order }, report) => {
    const slabs = lensesOf(order).flatMap(({ eye, slab }) => (slab ? [{ eye, slab }] : []));
    const wanted = slabs.length > 0 ? slabFor(order) : null;
    if (!wanted || isLess(wanted.amount, LEAST)) return;
    for (const { eye, slab } of slabs) {
      const { reverse } = slab.value;
      const expected = reverse ? wanted.reverse : wanted.slab;
      if (eye !== expected)
        report(slab.place, { reverse, expected, amount: wanted.amount, level: wanted.level }, { eye });
    }
  },
};
