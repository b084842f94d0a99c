import { subjectInWords } from '../../measure-words';
import type { Measure } from '../../measures/measure';
import type { Order } from '../../model';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';
import { isLensReplaced, isNotedBelow, readLater } from './later-reading';
import { newestReading } from './newest-reading';

export const reworkUnsaid: Rule = {
  code: 'rework-unsaid',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A figure was out of tolerance, or a person refused the pair, and a later reading is clean without a word of what was done: no `replaced`, no note.',
    why: 'A lens does not come into tolerance by being read again. Either the first reading was wrong, or the lens was turned or made new; whoever signs has to know which. A pair that is read until it fits is no good pair.',
    example: {
      wrong: 'reading 2026-11-25\n    R -4.50 -0.75 x 022',
      right: 'reading 2026-11-25\n    replaced R\n    R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: ({ measures, decided }) => {
    const all = measures as readonly Measure[];
    const was =
      all.length > 0
        ? `${capital([...new Set(all.map(subjectInWords))].join(', '))} out of tolerance before`
        : `Decided before: ${decided}`;
    return `${was}, within tolerance now. What was done? Write \`replaced\` or a note into this reading.`;
  },
  check: ({ order, evaluation, block }, report) => {
    const newest = newestReading(order);
    if (!newest || evaluation.verdict !== 'accept') return;
    const measures = evaluation.earlier.filter((before) => isUnexplained(order, evaluation.measures, before));
    const { decided } = order;
    const isRefused =
      decided !== null &&
      decided.verdict !== 'accept' &&
      decided.place.line < newest.reading.place.line &&
      !isReplacedBelow(order, decided.place.line);
    if (measures.length === 0 && !isRefused) return;
    const since = Math.min(
      ...measures.flatMap(({ place }) => place?.line ?? []),
      isRefused ? decided.place.line : Number.POSITIVE_INFINITY,
    );
    if (isNotedBelow(block, since)) return;
    const related = measures.flatMap(({ place }) => place ?? []);
    report(newest.reading.place, { measures, decided: isRefused ? decided.verdict : null }, { related });
  },
};

/** Failed, is clean now, and the lens is said to be the same. */
const isUnexplained = (order: Order, measures: readonly Measure[], before: Measure): boolean =>
  before.outcome === 'fail' &&
  // A test taken again has a rule of its own.
  before.unit !== null &&
  !isLensReplaced(order, before) &&
  measures.some(
    (now) =>
      now.quantity === before.quantity &&
      now.eye === before.eye &&
      now.outcome === 'pass' &&
      readLater(order, now, before),
  );

const isReplacedBelow = ({ readings }: Order, line: number): boolean =>
  readings.some(({ replaced }) => replaced.some(({ place }) => place.line > line));
