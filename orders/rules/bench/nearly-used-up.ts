import { roundTo } from '../../exact';
import { deviationInWords, subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import { amountInWords } from '../../words';
import { byPlace } from '../by-place';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';

export const nearlyUsedUp: Rule = {
  code: 'nearly-used-up',
  family: 'bench',
  level: 'info',
  page: {
    checks:
      'A deviation is inside its limit, but takes up at least the share of it that the bench has chosen to be told of. Nothing is told until a share is set.',
    why: 'A lens that passes with nothing to spare may fail on the next instrument, or in the hands of whoever checks it after you. A run of them is how a machine that drifts shows itself first.',
    example: { wrong: 'R -4.50 -0.75 x 026', right: 'R -4.50 -0.75 x 023' },
    source: 'Common practice, no source.',
  },
  message: ({ measures }) => `${capital((measures as readonly Measure[]).map(used).join('; '))}.`,
  check: ({ evaluation, context: { nearPercent } }, report) => {
    if (nearPercent === null) return;
    for (const measures of byPlace(evaluation.measures.filter((one) => isNearlyUsedUp(one, nearPercent)))) {
      const [{ place, eye }] = measures;
      if (place) report(place, { measures }, eye ? { eye } : {});
    }
  },
};

/** What one eighth leaves open is told as near the limit. */
function isNearlyUsedUp(measure: Measure, nearPercent: number): boolean {
  const share = percentUsed(measure);
  return measure.outcome === 'pass' && !measure.tooCoarse && share !== null && share >= nearPercent;
}

/** How much of its limit a deviation takes up, in percent; null without a limit, or with one of nothing. */
export function percentUsed({ deviation, limit }: Measure): number | null {
  if (deviation === null || !limit?.amount) return null;
  return roundTo((Math.abs(deviation) / limit.amount) * 100, 4);
}

const used = (measure: Measure): string =>
  `${subjectInWords(measure)} off by ${deviationInWords(measure)}, which is ${roundTo(percentUsed(measure) ?? 0, 0)} % of the limit of ${amountInWords(measure.limit?.amount ?? 0, measure.unit)} (${measure.limit?.set})`;
