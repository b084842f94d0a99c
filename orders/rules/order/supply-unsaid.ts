import type { Rule } from '../rule';
import { madeLenses } from './lenses';
import { lineBelow } from './line-below';

export const supplyUnsaid: Rule = {
  code: 'supply-unsaid',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'A final reading was taken, and the order says neither how the lenses are supplied nor anything of a frame, a PD or a height.',
    why: 'The lenses are taken to be uncut, so no centre, no prism between the eyes and no impact test is called for. Two powers alone say nothing of a finished pair.',
    example: { wrong: 'order QL-1042', right: 'supply uncut' },
    fix: 'Says how the lenses are supplied.',
    source: 'Common practice, no source.',
  },
  message: () =>
    'Supplied glazed, edged or uncut? The order does not say, so the lenses are taken to be uncut and no centres are called for.',
  fixes: (site) => ['glazed', 'uncut', 'edged'].map((word) => lineBelow(site, `They are ${word}`, `  supply ${word}`)),
  check: ({ order }, report) => {
    if (order.supplyFrom !== 'assumed' || madeLenses(order).length === 0) return;
    if (order.readings.some(({ stage, measurements }) => stage === 'final' && measurements.length > 0))
      report(order.place);
  },
};
