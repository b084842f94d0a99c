import type { Place } from '../../finding';
import { feelsSlab } from '../../reduce';
import type { Rule } from '../rule';

export const clockOnSlab: Rule = {
  code: 'clock-on-slab',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A lens with a slab-off was clocked, and the line does not say that it is the slab-off. The figures count neither as an add nor as warp. A warning; an info where add and slab-off were read as well.',
    why: 'With its middle pin on the line of a slab-off a lens measure moves by the prism of the slab. The same two figures would be an add of the wrong size, or a warp that is not there.',
    example: { wrong: 'clock R +6.25 -> +3.25', right: 'slab-off R clock +6.25 -> +3.25' },
    source:
      'Shift of the dial on a slab-off line: derived from two planes that meet under the middle pin; the classroom rule of 1 D for each prism dioptre is from memory of Brooks & Borish.',
  },
  message: () =>
    'This lens has a slab-off, so two curves are no add and no warp. Write slab-off with its eye and clock for the slab; take the add on the focimeter.',
  needs: 'slab',
  check: ({ order, evaluation }, report) => {
    const told = new Set<Place>();
    for (const { measurements } of order.readings) {
      for (const one of measurements) {
        if (!feelsSlab(one, order.lenses) || !one.eye || told.has(one.place)) continue;
        told.add(one.place);
        const { add, figures } = evaluation.values;
        const isAnswered = Boolean(add[one.eye] && figures.slab?.[one.eye]);
        report(one.place, {}, { eye: one.eye, ...(isAnswered ? { level: 'info' as const } : {}) });
      }
    }
  },
};
