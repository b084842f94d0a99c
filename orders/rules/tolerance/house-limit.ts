import { deviationInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { amountInWords } from '../../words';
import { readAndOrdered, subjectFirst } from '../read-and-ordered';
import type { Rule } from '../rule';

export const houseLimit: Rule = {
  code: 'house-limit',
  family: 'tolerance',
  level: 'warning',
  page: {
    checks: 'A reading is inside the published set, and outside what the house asks beyond it.',
    levels: 'A warning; an info once a person has decided on the pair with a reason.',
    why: 'The verdict stays that of the standard, and the acceptance is one with reservations. Laboratories work to the limits they have been told; a tighter one that only the shop knows makes good lenses come back.',
    example: { wrong: 'R -4.60 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source: 'Envision magazine, “American tolerance standards in Canada”.',
  },
  message: (data) => {
    const measure = data as unknown as Measure;
    const { house, limit, unit } = measure;
    const published = limit?.amount == null ? '' : `Inside ${amountInWords(limit.amount, limit.unit)} (${limit.set}), `;
    const asked = `${published ? 'outside' : 'Outside'} the ${amountInWords(house?.amount ?? 0, unit)} of ${house?.set}.`;
    return `${subjectFirst(measure)} ${readAndOrdered(measure)}: off by ${deviationInWords(measure)}. ${published}${asked}`;
  },
  needs: 'house',
  check: ({ order, evaluation }, report) => {
    for (const measure of evaluation.measures) {
      if (!measure.house?.breached || measure.outcome === 'fail' || measure.place === null) continue;
      const isDecided = order.decided !== null && order.decided.why !== null;
      report(
        measure.place,
        { ...measure },
        { ...(measure.eye ? { eye: measure.eye } : {}), ...(isDecided ? { level: 'info' } : {}) },
      );
    }
  },
};
