import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { amountInWords } from '../../words';
import { byPlace } from '../by-place';
import { capital, readAndOrdered } from '../read-and-ordered';
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
  message: ({ measures }) => {
    const all = measures as readonly Measure[];
    const figures = all.map((one) => `${subjectInWords(one)} ${readAndOrdered(one)}`).join('; ');
    const [limit] = all.flatMap((one) => one.limit ?? []);
    const printed =
      limit?.amount == null ? '' : ` against a limit of ${amountInWords(limit.amount, limit.unit)} (${limit.set})`;
    return `${capital(figures)}: one eighth${printed}. It counts as inside, but this instrument cannot decide it.`;
  },
  needs: 'coarse',
  check: ({ evaluation }, report) => {
    // One slip of the drum shows in the power and in the cylinder of the same line; it is told once.
    for (const measures of byPlace(evaluation.measures.filter(({ tooCoarse }) => tooCoarse))) {
      const [{ place, eye }] = measures;
      if (place) report(place, { measures }, eye ? { eye } : {});
    }
  },
};
