import { isLess, isWithin } from '../../exact';
import type { Rule } from '../rule';

/** How unlike the halves have to be before an exchange can be told from the error of a ruler, millimetres. Ours. */
const UNLIKE = 3;
const ALIKE = 1;

export const halvesExchanged: Rule = {
  code: 'halves-exchanged',
  family: 'bench',
  level: 'error',
  page: {
    checks: 'The distances of the two eyes were ordered at least 3 mm unlike, and were measured the other way round.',
    why: 'The whole is right, so a set that judges the whole alone passes it. Each centre stands as far beside its pupil as the halves differ, and in a strong lens that is prism before each eye.',
    example: { wrong: 'pd R 34 L 29', right: 'pd R 29 L 34' },
    source: 'Common practice, no source. Prism from a centre beside the pupil is Prentice’s rule.',
  },
  message: ({ right, left, orderedRight, orderedLeft }) =>
    `Measured R ${right} L ${left} mm, ordered R ${orderedRight} L ${orderedLeft}: are the lenses or the figures exchanged?`,
  needs: 'monocular',
  check: ({ order, evaluation: { values } }, report) => {
    for (const [of, ordered] of [
      ['pd', order.pd],
      ['near-pd', order.nearPd],
    ] as const) {
      const { R, L } = values.figures[of] ?? {};
      if (!R || !L || !ordered.R || !ordered.L) continue;
      if (isLess(Math.abs(ordered.R.value - ordered.L.value), UNLIKE)) continue;
      if (!isWithin(R.value - ordered.L.value, ALIKE) || !isWithin(L.value - ordered.R.value, ALIKE)) continue;
      const data = { right: R.value, left: L.value, orderedRight: ordered.R.value, orderedLeft: ordered.L.value };
      report(R.place, data, { related: [L.place] });
    }
  },
};
