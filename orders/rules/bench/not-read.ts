import type { Rule } from '../rule';
import { type Missing, missingInWords, missingOf } from './missing-in-words';
import { newestReading } from './newest-reading';

export const notRead: Rule = {
  code: 'not-read',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Something that the order calls for has not been read. One finding names all that is missing, with the lens, the point or the part where the rest of it was read; it stands at the newest reading. An order without any reading is unread and raises nothing.',
    why: 'A pair is good when everything was read and is inside, not when nothing was found outside. Lenses that were ground exactly to a wrong entry have been dispensed because nobody read them.',
    example: { wrong: 'R -4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022 L -4.25 -1.00 x 168' },
    source:
      'What is called for follows the tables of the tolerance set that the order names. The event: Envision magazine, “quality control can trip you up”.',
  },
  message: ({ missing, final }) =>
    `Not read yet: ${missingInWords(missing as readonly Missing[])}.${final ? '' : ' There is no final reading; earlier stages do not count for a glazed pair.'}`,
  needs: 'not-read',
  check: ({ order, evaluation }, report) => {
    const newest = newestReading(order);
    const missing = missingOf(evaluation.measures, order, evaluation.values);
    if (!newest || missing.length === 0) return;
    const isExpected = !newest.final || (order.decided !== null && order.decided.why !== null);
    report(newest.reading.place, { missing, final: newest.final }, isExpected ? { level: 'info' } : {});
  },
};
