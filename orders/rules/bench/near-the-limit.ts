import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { amountInWords, valueInWords } from '../../words';
import type { Rule } from '../rule';

export const nearTheLimit: Rule = {
  code: 'near-the-limit',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A figure is one eighth away from the order, the printed limit is 0.12 or 0.13, and the instrument shows nothing between the eighths.',
    why: 'The lens may be just inside or just outside; this instrument cannot tell. It counts as inside, on either side of the order alike, and the acceptance is one with reservations. A finer instrument settles it.',
    example: { wrong: 'R -4.50 -0.62 x 022', right: 'R -4.50 -0.75 x 022' },
    source: 'Common practice, no source.',
  },
  message: (data) => {
    const measure = data as unknown as Measure;
    const { read, ordered, unit, limit } = measure;
    const figures = `read ${valueInWords(read ?? 0, unit)}, ordered ${valueInWords(ordered ?? 0, unit)}`;
    const printed =
      limit?.amount == null ? '' : ` against a limit of ${amountInWords(limit.amount, limit.unit)} (${limit.set})`;
    return `${capital(subjectInWords(measure))} ${figures}: one eighth${printed}. It counts as inside, but this instrument cannot decide it.`;
  },
  check: ({ evaluation }, report) => {
    for (const measure of evaluation.measures) {
      if (measure.tooCoarse && measure.place)
        report(measure.place, { ...measure }, measure.eye ? { eye: measure.eye } : {});
    }
  },
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
