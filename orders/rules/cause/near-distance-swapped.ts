import { madeUp } from '../../causes/explanation';
import { isLess, isWithin, tidy } from '../../exact';
import type { Quantity } from '../../measures/measure';
import type { Distances } from '../../model';
import type { ReadValues } from '../../reduce';
import { valueInWords } from '../../words';
import { cause } from './cause';

export const nearDistanceSwapped = cause(
  'near-distance-swapped',
  {
    checks:
      'The PD read is the ordered near PD, and the near PD read the ordered distance PD, or the pair is centred at the near PD alone. Level: info.',
    why: 'Two figures near 60 are easily taken for each other, in the order book and at the layout. Common practice is to read which figure stands in which row, and if the reading is right, to set the lenses anew; the powers are not at fault.',
    example: { wrong: 'pd 60 near 63', right: 'pd 63 near 60' },
    source:
      'Question page on near and far PD, as the confusion of the two numbers of an order; at the layout common practice, no source.',
  },
  ({ read, distance, near }) =>
    `Distance and near PD look exchanged: ${valueInWords(Number(read), 'mm')} is read for the distance, where ${valueInWords(Number(distance), 'mm')} is ordered, and ${valueInWords(Number(near), 'mm')} for near.`,
  (scene) => {
    const { order, values, failed } = scene;
    const [distance, near] = [orderedTotal(order.pd), orderedTotal(order.nearPd)];
    const [read, readNear] = [readTotal(values, 'pd'), readTotal(values, 'near-pd')];
    const explains = failed.filter(({ quantity }) => PLACING.includes(quantity));
    if (distance === null || near === null || read === null || explains.length === 0) return [];
    const fits = isWithin(read - near, AS_READ) && (readNear === null || isWithin(readNear - distance, AS_READ));
    return fits && !isLess(distance - near, LEAST) ? [madeUp(null, explains, { read, distance, near })] : [];
  },
);

const PLACING: readonly Quantity[] = ['pd', 'near-pd', 'prism-horizontal'];

/** Millimetres: what a ruler is read to, and the least by which two PDs are told apart. Common practice, no source. */
const AS_READ = 0.75;
const LEAST = 2;

const orderedTotal = ({ binocular, R, L }: Distances): number | null =>
  binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);

function readTotal({ figures }: ReadValues, quantity: 'pd' | 'near-pd'): number | null {
  const { pair, R, L } = figures[quantity] ?? {};
  return pair?.value ?? (R && L ? tidy(R.value + L.value) : null);
}
