import { setRight } from '../../causes/explanation';
import { heightErrors } from '../../causes/height-errors';
import { withFigures } from '../../causes/lenses';
import { isLess, isWithin, tidy } from '../../exact';
import { EYES } from '../../model';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const heightsShifted = cause(
  'heights-shifted',
  {
    checks: 'Both heights are off by the same amount in the same direction. Level: info.',
    why: 'Heights count from the lower tangent of the boxed lens. Taken from the deepest point below the pupil, or from the middle line, both come out wrong by one amount, and so does a frame that sits higher than the one measured. Common practice is to measure again from the right line, and to try the nose pads, before a lens is made again.',
    example: { wrong: 'height R 19 L 19', right: 'height R 17 L 17' },
    source: 'BHVI, facial measurements and lens reference points: the two datum lines, never mixed.',
  },
  ({ by, half }) =>
    `Both heights are ${amountInWords(Number(by), 'mm')} too ${Number(by) > 0 ? 'high' : 'low'}. ${half ? `That is half the ${amountInWords(2 * Number(half), 'mm')} of B: were they taken from the middle line?` : 'Were they taken from another line than the lower tangent of the boxed lens?'}`,
  (scene) => {
    const errors = heightErrors(scene);
    if (
      !errors ||
      errors.R * errors.L <= 0 ||
      isLess(Math.min(ALIKE, SHARE * Math.abs(errors.R)), Math.abs(errors.R - errors.L))
    )
      return [];
    const by = tidy((errors.R + errors.L) / 2);
    const undone = withFigures(scene.values, 'height', EYES, (value) => value - by);
    const right = undone && setRight(scene, { values: undone }, { of: ['height'], eyes: EYES });
    const b = scene.order.frame.b?.value ?? null;
    const half = b !== null && isWithin(Math.abs(by) - b / 2, ALIKE) ? b / 2 : null;
    return right ? [{ ...right, eye: null, data: { by, half } }] : [];
  },
);

/** Millimetres, and a share of smaller errors: a ruler is read to half a millimetre. Common practice, no source. */
const ALIKE = 0.5;
const SHARE = 0.25;
