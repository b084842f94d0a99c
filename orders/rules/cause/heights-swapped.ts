import { madeUp } from '../../causes/explanation';
import { isLess, isWithin } from '../../exact';
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
  ({ order, values, failed }) => {
    const { R, L } = values.figures.height ?? {};
    const [right, left] = [order.lenses.R.height?.value, order.lenses.L.height?.value];
    if (!R || !L || right === undefined || left === undefined || isLess(Math.abs(right - left), LEAST)) return [];
    const explains = failed.filter(({ place }) => place === R.place || place === L.place);
    const fits = isWithin(R.value - left, AS_READ) && isWithin(L.value - right, AS_READ);
    return fits && explains.length > 0 ? [madeUp(null, explains, { R: R.value, L: L.value })] : [];
  },
);

/** Millimetres: what a ruler is read to, and the least by which two heights are told apart. Common practice, no source. */
const AS_READ = 0.5;
const LEAST = 1;
