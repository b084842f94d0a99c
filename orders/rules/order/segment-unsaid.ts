import { isSegmented } from '../../lens-kinds';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

export const segmentUnsaid: Rule = {
  code: 'segment-unsaid',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'A bifocal, a trifocal or a double segment is ordered without the shape of its segment, or without its width.',
    why: 'A round 22 and a flat-top 28 are two products, and the laboratory has to ask.',
    example: { wrong: 'design bifocal', right: 'design bifocal flat-top 28' },
    source:
      'Another product than the one meant was delivered in one lens of five: a poster on spectacles bought on line, as reported by mivision and Healio, 2012.',
  },
  message: ({ type, shape }) =>
    shape
      ? `How wide is the ${shape} segment?`
      : `Which segment has this ${type}: flat-top, round, curve-top or full-width, and how wide?`,
  needs: 'segment',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order)
        .filter(isSegmented)
        .flatMap((lens) => {
          if (!lens.design) return [];
          const { type, shape, width } = lens.design.value;
          if (shape === 'full-width' || (shape && width !== null)) return [];
          return [{ lens, place: lens.design.place, data: { type, shape } }];
        }),
    );
  },
};
