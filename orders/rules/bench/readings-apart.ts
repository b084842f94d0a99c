import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { amountInWords, valueInWords } from '../../words';
import { byPlace } from '../by-place';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';
import { areApart, outlierOf } from './repeats';

export const readingsApart: Rule = {
  code: 'readings-apart',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The same thing was read more than once, and the readings lie further apart than the limit it is held against.',
    why: 'The mean of two readings that disagree by more than the tolerance can pass any lens. It is not judged until the readings agree: centre the lens again, look at the eyepiece and the zero, and read once more.',
    example: { wrong: 'again R -4.75 -0.75 x 022', right: 'again R -4.50 -0.75 x 022' },
    source: 'Common practice, no source.',
  },
  message: ({ measures }) =>
    `${capital((measures as readonly Measure[]).map(apart).join('; '))}. Not judged until they agree.`,
  needs: 'repeats',
  check: ({ evaluation }, report) => {
    for (const measures of byPlace(evaluation.measures.filter((one) => areApart(one) && !outlierOf(one)))) {
      const [{ repeats, place, eye }] = measures;
      const last = repeats.at(-1)?.place ?? place;
      const related = repeats.slice(0, -1).map((one) => one.place);
      if (last) report(last, { measures }, { ...(eye ? { eye } : {}), related });
    }
  },
};

function apart(measure: Measure): string {
  const { repeats, spread, unit, limit } = measure;
  const values = repeats.map(({ read }) => valueInWords(read, unit));
  const most = limit?.amount == null ? '' : `, limit ${amountInWords(limit.amount, limit.unit)} (${limit.set})`;
  return `${subjectInWords(measure)} read ${values.slice(0, -1).join(', ')} and ${values.at(-1)}: ${amountInWords(spread ?? 0, unit)} apart${most}`;
}
