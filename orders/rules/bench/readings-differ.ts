import { isLess } from '../../exact';
import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import type { Order } from '../../model';
import { amountInWords, valueInWords } from '../../words';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';
import { isLensReplaced, readLater } from './later-reading';

export const readingsDiffer: Rule = {
  code: 'readings-differ',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Two people or two instruments read the same lens, and their figures differ by more than half the tolerance. The later one counts.',
    why: 'Both were within tolerance or the later one would not stand alone; but half a tolerance between two readings is more than a lens changes by itself. Either an instrument is off or somebody slipped, and nobody knows which of the two is right.',
    example: {
      wrong: 'reading 2026-11-25 by MT\n    R -4.60 -0.75 x 022',
      right: 'reading 2026-11-25 by MT\n    R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: (data) => {
    const { now, before, by } = data as unknown as Told;
    const figures = `${valueInWords(before.read ?? 0, before.unit)} first, ${valueInWords(now.read ?? 0, now.unit)} now`;
    const limit =
      now.limit?.amount == null ? '' : `; half the tolerance is ${amountInWords(now.limit.amount / 2, now.unit)}`;
    return `${capital(subjectInWords(now))} measured ${figures}, by another ${by}${limit}. Read it once more.`;
  },
  check: ({ order, evaluation }, report) => {
    for (const before of evaluation.earlier) {
      const now = evaluation.measures.find((one) => isSameMeasure(one, before));
      if (!now?.place || before.outcome !== 'pass' || !readLater(order, now, before)) continue;
      const by = otherTaker(order, now, before);
      const most = now.limit?.amount ?? null;
      if (!by || most === null || isLensReplaced(order, before)) continue;
      const apart = Math.abs((now.deviation ?? 0) - (before.deviation ?? 0));
      if (!isLess(most / 2, apart)) continue;
      const data: Told = { now, before, by };
      report(
        now.place,
        { ...data },
        { ...(now.eye ? { eye: now.eye } : {}), related: before.place ? [before.place] : [] },
      );
    }
  },
};

interface Told {
  readonly now: Measure;
  readonly before: Measure;
  readonly by: 'person' | 'instrument';
}

const isSameMeasure = (a: Measure, b: Measure): boolean =>
  a.quantity === b.quantity && a.eye === b.eye && a.meridian === b.meridian;

function otherTaker({ readings }: Order, now: Measure, before: Measure): Told['by'] | null {
  const [a, b] = [readings[now.reading ?? -1], readings[before.reading ?? -1]];
  if (!a || !b) return null;
  if (a.with !== null && b.with !== null && a.with !== b.with) return 'instrument';
  return a.by !== null && b.by !== null && a.by !== b.by ? 'person' : null;
}
