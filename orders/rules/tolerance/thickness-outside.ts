import type { Measure } from '../../measures/measure';
import { valueInWords } from '../../words';
import { subjectFirst } from '../read-and-ordered';
import { outside, readAgainstOrdered } from './outside';

export const thicknessOutside = outside(
  'thickness-outside',
  ['centre-thickness', 'edge-thickness', 'min-thickness'],
  {
    checks:
      'A thickness differs from the ordered one by more than the tolerance set allows, or a lens is thinner somewhere than the order permits.',
    why: 'A lens too thin may break before the eye; a lens too thick is heavy and does not sit in the rim. A thickness that was asked for as a lower bound is a matter of safety: such a lens is not dispensed, and no acceptance covers it.',
    example: { wrong: 'thickness R centre 1.4', right: 'thickness R centre 2.0' },
    source:
      'The tolerance set that the order names. For safety eyewear the bought text of the standard and the law of the place rule.',
  },
  (measure) => (measure.limit === null ? belowBound(measure) : readAgainstOrdered(measure)),
);

/** A lower bound is set by the order itself, and no table is asked. */
const belowBound = (measure: Measure): string =>
  `${subjectFirst(measure)} read ${valueInWords(measure.read ?? 0, measure.unit)}; the order asks for at least ${valueInWords(measure.ordered ?? 0, measure.unit)}.`;
