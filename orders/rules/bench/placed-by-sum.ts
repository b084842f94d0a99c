import { classOfPair } from '../../measures/measure';
import { acrossAsRead } from '../../measures/places';
import { prismRead } from '../../measures/wanted-prism';
import { EYES } from '../../model';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';

export const placedBySum: Rule = {
  code: 'placed-by-sum',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The order states a PD for each eye, and only the whole distance was measured: neither the place of each lens nor its prism.',
    why: 'The sum is right when both lenses stand too far to the same side. Where the order says how far each eye is from the nose, somebody measured it for a reason. Measure each side from the middle of the bridge, or the prism at the ordered points.',
    example: { wrong: 'pd 63', right: 'pd R 31 L 32' },
    source: 'Common practice, no source.',
  },
  message: ({ whole }) =>
    `Only the whole distance of ${amountInWords(Number(whole), 'mm')} was measured, and the order states one for each eye. Measure each side.`,
  needs: 'monocular',
  check: ({ order, evaluation }, report) => {
    const { pd, supply, lenses } = order;
    const { set, values } = evaluation;
    if (!set || supply !== 'glazed' || !pd.R || !pd.L || classOfPair(order) === 'progressive') return;
    if (EYES.some((eye) => lenses[eye].role !== 'made') || EYES.every((eye) => prismRead(order, values, eye))) return;
    const whole = acrossAsRead(order, values)?.from;
    // A figure put together of both sides has a step that says so.
    if (!whole || whole.steps.some(({ step }) => step === 'sum')) return;
    report(whole.place, { whole: whole.value }, { level: whileItCounts(evaluation, whole.reading, 'warning') });
  },
};
