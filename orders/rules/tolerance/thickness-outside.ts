import type { Measure } from '../../measures/measure';
import { valueInWords } from '../../words';
import { subjectFirst } from '../read-and-ordered';
import { outside, readAgainstOrdered } from './outside';

export const thicknessOutside = outside(
  'thickness-outside',
  ['centre-thickness', 'edge-thickness', 'min-thickness'],
  {
    checks:
      'A thickness differs from the ordered one by more than the tolerance set allows, or a lens is thinner somewhere than the order permits. A least thickness is compared with the thinnest figure read, at the centre, at the edge or as the least. With `purpose safety` and a set of the United States no lens may be thinner than 2.0 mm, whatever the order says.',
    why: 'A lens too thin may break before the eye; a lens too thick is heavy and does not sit in the rim. A thickness that was asked for as a lower bound is a matter of safety: such a lens is not dispensed, and no acceptance covers it.',
    example: { wrong: 'thickness R centre 1.4', right: 'thickness R centre 2.0' },
    source:
      'The tolerance set that the order names; for protection 2.0 mm, ANSI Z87.1 as retold in a laboratory manual. For safety eyewear the bought text of the standard and the law of the place rule.',
  },
  (measure) => (measure.limit === null ? belowBound(measure) : readAgainstOrdered(measure)),
  // A figure below what the whole lens has to have is told as that, and not as the thickness of one place as well.
  (measure, failed) =>
    measure.quantity !== 'min-thickness' &&
    failed.some(({ quantity, place }) => quantity === 'min-thickness' && place === measure.place),
);

/** A lower bound is set by the order itself or by what the pair is for, and is no limit either way. */
function belowBound(measure: Measure): string {
  const { read, ordered, unit, because } = measure;
  const who = because === 'least-for-safety' ? 'protection calls' : 'the order asks';
  return `${subjectFirst(measure)} read ${valueInWords(read ?? 0, unit)}; ${who} for at least ${valueInWords(ordered ?? 0, unit)}.`;
}
