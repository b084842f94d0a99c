import { deviationInWords, subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { isNear } from '../../uncertainty';
import { amountInWords } from '../../words';
import { byPlace } from '../by-place';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';

export const withinUncertainty: Rule = {
  code: 'within-uncertainty',
  family: 'bench',
  level: 'hint',
  page: {
    checks:
      'A deviation lies nearer to its limit, on either side, than the instrument may be off by itself: by the uncertainty stated for it, or by the indication limit for its kind.',
    why: 'A limit of 0.13 D and an instrument good to 0.06 D leave a band in which the reading alone does not tell. The verdict is that of the figures as read; where much hangs on it, a finer instrument or a second one decides.',
    example: { wrong: 'R -4.60 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    source:
      'ISO 8598:1996, limits of the indication, in the wording of TCVN 8290:2009. How to decide near a limit: JCGM 106 (from memory).',
  },
  message: ({ measures, name }) =>
    `${capital((measures as readonly Measure[]).map(near).join('; '))}. ${name ?? 'The instrument'} alone may be off by ${amountInWords((measures as readonly [Measure])[0].uncertainty ?? 0, (measures as readonly [Measure])[0].unit)}, so this does not tell on which side the lens lies.`,
  needs: 'uncertainty',
  check: ({ order, evaluation }, report) => {
    for (const measures of byPlace(evaluation.measures.filter(isUnsure))) {
      const [{ place, eye, reading }] = measures;
      const name = reading === null ? null : (order.readings[reading]?.with ?? null);
      if (place) report(place, { measures, name }, eye ? { eye } : {});
    }
  },
};

/** What one eighth leaves open is told as near the limit. */
function isUnsure({ outcome, uncertainty, deviation, limit, tooCoarse }: Measure): boolean {
  if (tooCoarse || (outcome !== 'pass' && outcome !== 'fail')) return false;
  if (uncertainty === null || deviation === null || limit?.amount == null) return false;
  return isNear(deviation, limit.amount, uncertainty);
}

const near = (measure: Measure): string =>
  `${subjectInWords(measure)} off by ${deviationInWords(measure)}, limit ${amountInWords(measure.limit?.amount ?? 0, measure.unit)} (${measure.limit?.set})`;
