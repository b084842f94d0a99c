import { type Explanation, setRight } from '../../causes/explanation';
import { withFigures } from '../../causes/lenses';
import { tidy } from '../../exact';
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
    const [distance, near] = [total(scene.order.pd), total(scene.order.nearPd)];
    const read = distanceRead(scene.values);
    if (distance === null || near === null || read === null) return [];
    const undone = [bothExchanged(scene.values), centredForNear(scene.values, tidy(distance - near))];
    return undone
      .flatMap((values): Explanation[] => {
        const right = values && setRight(scene, { values }, { of: PLACING });
        return right ? [{ ...right, eye: null, data: { read, distance, near } }] : [];
      })
      .slice(0, 1);
  },
);

const PLACING: readonly Quantity[] = ['pd', 'near-pd', 'prism-horizontal'];

const total = ({ binocular, R, L }: Distances): number | null =>
  binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);

function distanceRead({ figures: { pd } }: ReadValues): number | null {
  return pd?.pair?.value ?? (pd?.R && pd.L ? tidy(pd.R.value + pd.L.value) : null);
}

function bothExchanged(values: ReadValues): ReadValues | null {
  const { pd, 'near-pd': near } = values.figures;
  return pd && near ? { ...values, figures: { ...values.figures, pd: near, 'near-pd': pd } } : null;
}

/** Each lens stands in by half of what the eyes turn in. */
const centredForNear = (values: ReadValues, more: number): ReadValues | null =>
  values.figures.pd?.pair
    ? withFigures(values, 'pd', ['pair'], (value) => value + more)
    : withFigures(values, 'pd', ['R', 'L'], (value) => value + more / 2);
