import type { Place } from '../../finding';
import { addAsRead } from '../../measures/add-as-read';
import { feelsNothing } from '../../reduce';
import type { Rule } from '../rule';

export const clockFused: Rule = {
  code: 'clock-fused',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The add of a fused segment was taken with a lens measure. Segments of glass are fused, except full-width ones. The figures do not count as read.',
    why: 'The pins of a lens measure feel a change of curve. A fused segment lies inside the lens and has the same surface as the rest, so the dial says nothing about its add, whatever it shows. The focimeter reads it, with the front on the stop.',
    example: { wrong: 'clock R +6.25 -> +8.25', right: 'add R -4.50 -> -2.50 front-vertex' },
    source:
      'A fused segment has no change of curve to feel: from memory of Brooks & Borish, System for Ophthalmic Dispensing.',
  },
  message: () =>
    'A fused segment has no curve of its own that a lens measure could feel. This does not count as read; take the add on the focimeter.',
  needs: 'difference',
  check: ({ order, evaluation }, report) => {
    const told = new Set<Place>();
    for (const [index, { measurements }] of order.readings.entries()) {
      for (const one of measurements) {
        if (!feelsNothing(one, order.lenses) || !one.eye || told.has(one.place)) continue;
        told.add(one.place);
        const read = addAsRead(evaluation.values, one.eye) ?? evaluation.values.engravedAdd[one.eye];
        const isAnswered = read !== undefined && read.reading >= index;
        report(one.place, {}, { eye: one.eye, level: isAnswered ? 'info' : 'warning' });
      }
    }
  },
};
