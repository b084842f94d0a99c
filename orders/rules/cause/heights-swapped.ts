import { setRight } from '../../causes/explanation';
import type { Quantity } from '../../measures/measure';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const heightsSwapped = cause(
  'heights-swapped',
  {
    checks: 'The two heights fit the order when they are exchanged. Level: info.',
    why: 'Unequal heights are ordered for a face that is not level, and exchanged they double the difference. Common practice is to see which lens is higher in the frame, and then to set the pair anew or to mend the row of the reading.',
    example: { wrong: 'height R 16 L 18', right: 'height R 18 L 16' },
    source: 'Common practice, no source.',
  },
  ({ R, L }) =>
    `The heights look exchanged: R ${amountInWords(Number(R), 'mm')} and L ${amountInWords(Number(L), 'mm')} are ordered the other way round.`,
  (scene) => {
    const { R, L } = scene.values.figures.height ?? {};
    const figures = R && L && { ...scene.values.figures, height: { R: L, L: R } };
    const right = figures && setRight(scene, { values: { ...scene.values, figures } }, { of: HEIGHTS });
    return right ? [{ ...right, eye: null, data: { R: R.value, L: L.value } }] : [];
  },
);

const HEIGHTS: readonly Quantity[] = ['height', 'height-difference', 'prism-vertical'];
