import { subjectInWords } from '../../measure-words';
import type { Measure, Repeat } from '../../measures/measure';
import { amountInWords, valueInWords } from '../../words';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';
import { outlierOf } from './repeats';

export const repeatOutlier: Rule = {
  code: 'repeat-outlier',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Of three or more readings of the same thing, one is further from the median of the others than the limit, and the others agree.',
    why: 'One slip of the wheel or the pencil pulls the mean away from what the others say. Nobody knows from the page which reading is right, so it is not judged: read once more, and write the odd one out of the reading if it was a slip.',
    example: {
      wrong: 'again R -4.50 -0.75 x 022\n    again R -5.50 -0.75 x 022',
      right: 'again R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: (data) => {
    const measure = data as unknown as Measure & { readonly odd: Repeat };
    const { odd, unit, limit } = measure;
    const others = measure.repeats.filter(
      ({ place }) => place.line !== odd.place.line || place.start !== odd.place.start,
    );
    const words = others.map(({ read }) => valueInWords(read, unit)).join(', ');
    const most = limit?.amount == null ? '' : `, limit ${amountInWords(limit.amount, limit.unit)} (${limit.set})`;
    return `${capital(subjectInWords(measure))} read ${valueInWords(odd.read, unit)} here and ${words} otherwise${most}. One of them is a slip; not judged until they agree.`;
  },
  needs: 'repeats',
  check: ({ evaluation }, report) => {
    const told = new Set<string>();
    for (const measure of evaluation.measures) {
      const odd = outlierOf(measure);
      // The slip of one line shows in its power and in its cylinder; it is told once.
      const key = odd && `${odd.place.line}.${odd.place.start}`;
      if (!odd || key === null || told.has(key)) continue;
      told.add(key);
      const related = measure.repeats.filter((one) => one !== odd).map(({ place }) => place);
      report(odd.place, { ...measure, odd }, { ...(measure.eye ? { eye: measure.eye } : {}), related });
    }
  },
};
