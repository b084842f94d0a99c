import { isLater } from '../../evaluate';
import { subjectInWords } from '../../measure-words';
import type { Order, Reading } from '../../model';
import type { Rule } from '../rule';

export const otherStageOutside: Rule = {
  code: 'other-stage-outside',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A lens of a glazed order was measured at the stage of uncut or edged lenses after the finished pair, and is outside a limit.',
    why: 'Only a reading of the finished pair speaks for glazed spectacles. But what was measured last is outside: either the stage is the wrong word, or a lens is being made again and the finished pair is not the one that will go out.',
    example: {
      wrong: 'reading 2026-11-25 stage edged\n    R -6.00 -0.75 x 022',
      right: 'reading 2026-11-25 stage edged\n    R -4.50 -0.75 x 022',
    },
    source: 'Common practice, no source.',
  },
  message: ({ stage, what }) =>
    `Measured later at stage ${stage} and outside: ${what}. Is that the lens of the finished pair? Take a final reading of it.`,
  needs: 'outside',
  check: ({ order, evaluation: { earlier } }, report) => {
    if (order.supply !== 'glazed') return;
    const last = order.readings.reduce<Reading | null>(
      (best, one) =>
        one.stage === 'final' && one.measurements.length > 0 && !(best && isLater(best, one)) ? one : best,
      null,
    );
    if (!last) return;
    for (const [index, reading] of order.readings.entries()) {
      if (reading.stage === 'final' || !comesAfter(order, reading, last)) continue;
      const failed = earlier.filter((one) => one.outcome === 'fail' && one.reading === index);
      if (failed.length === 0) continue;
      const what = [...new Set(failed.map(subjectInWords))].join(', ');
      report(failed[0]?.place ?? reading.place, { stage: reading.stage, what });
    }
  },
};

/** By date and time, and of equals by the order of the lines. */
const comesAfter = ({ readings }: Order, reading: Reading, last: Reading): boolean =>
  isLater(reading, last) || (!isLater(last, reading) && readings.indexOf(reading) > readings.indexOf(last));
