import type { Place } from '../../finding';
import { EYES, type OrderedLens } from '../../model';
import type { Rule } from '../rule';

export const upperSegmentUnordered: Rule = {
  code: 'upper-segment-unordered',
  family: 'order',
  level: 'error',
  page: {
    checks: 'An add or a height of an upper segment is ordered or was measured, and the lens is no double segment.',
    why: 'Only a double segment has an upper one. Either the design is another than the one written, or the figure belongs elsewhere.',
    example: { wrong: 'add +1.50 at upper-segment', right: 'design double flat-top 28 gap 13' },
    source: 'Common practice, no source.',
  },
  message: ({ type }) =>
    `Only a double segment has an upper segment; ordered is ${type === null ? 'no design' : `a ${type} lens`}.`,
  check: ({ order }, report) => {
    const told = new Set<Place>();
    const tell = ({ design }: OrderedLens, place: Place | undefined): void => {
      if (!place || design?.value.type === 'double' || told.has(place)) return;
      told.add(place);
      report(place, { type: design?.value.type ?? null });
    };
    for (const eye of EYES) {
      const lens = order.lenses[eye];
      tell(lens, lens.upperAdd?.place);
      tell(lens, lens.upperHeight?.place);
    }
    for (const { measurements } of order.readings)
      for (const one of measurements) if (one.at === 'upper-segment' && one.eye) tell(order.lenses[one.eye], one.place);
  },
};
