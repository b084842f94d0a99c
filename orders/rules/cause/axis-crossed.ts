import { normalAxis } from '../../../optics';
import { inPowers } from '../../causes/lenses';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const axisCrossed = cause(
  'axis-crossed',
  {
    checks:
      'The axis read lies across the ordered one: turned by 90 degrees, power and axis are right. Level: info; the axis outside its limit is the error.',
    why: 'An axis of the plus form ground into the minus form, or the other way round, turns the lens by exactly 90 degrees and leaves twice the cylinder uncorrected. Read it once more before it is made again: the same figures come of a reading that took the wide lines first, or that did not turn the axis when it changed the form.',
    example: { wrong: 'R -4.50 -0.75 x 112', right: 'R -4.50 -0.75 x 022' },
    source:
      'Transposition: National Federation of Opticianry Schools, OPT11, answers 08c. That it happens: common practice, no source.',
  },
  (data) => `The axis of ${eyesInWords(data)} looks crossed: ${lensesInWords(data)}. Turned by 90° it fits.`,
  (scene) => inPowers(scene, (read) => ({ ...read, axis: normalAxis(read.axis + 90) })),
);
