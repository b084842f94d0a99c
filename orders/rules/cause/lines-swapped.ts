import { normalAxis } from '../../../optics';
import { inPowers } from '../../causes/lenses';
import { typedForm } from '../../causes/scene';
import { cause } from './cause';
import { eyesInWords, lensesInWords } from './in-words';

export const linesSwapped = cause(
  'lines-swapped',
  {
    checks: 'Two drum positions fit the order when they are exchanged: the wide lines were written first. Level: info.',
    why: 'The thin lines give the sphere, and the wheel belongs to them. With the wide lines first the same drum positions name a lens that is turned by 90 degrees. Common practice is to turn the drum once more and see which lines are sharp first; “thin” and “wide” before the figures leave no doubt.',
    example: { wrong: 'R lines -5.25 / -4.50 x 022', right: 'R lines -4.50 / -5.25 x 022' },
    source: '20/20, “quality assurance with your lensometer” (2005): wide lines first as a usual slip.',
  },
  (data) =>
    `The two lines of ${eyesInWords(data)} look exchanged: ${lensesInWords(data)}. With the other line first it fits.`,
  (scene) =>
    inPowers(scene, (read, eye) =>
      typedForm(scene, eye) === 'lines' ? { ...read, axis: normalAxis(read.axis + 90) } : null,
    ),
);
