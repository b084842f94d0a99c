import { isWithin, tidy } from '../../exact';
import type { Rule } from '../rule';

/** Two halves and a whole, each read to half a millimetre. */
const ALLOWED = 1;

export const readHalvesDisagree: Rule = {
  code: 'read-halves-disagree',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'A distance was read for the pair and for each eye in one reading, and the halves do not add up to the whole, by more than a millimetre.',
    why: 'One of the three figures is wrong, and nobody can say which. Whichever is judged, the other would say something else.',
    example: { wrong: 'pd 63 R 20 L 20', right: 'pd 63 R 31.5 L 31.5' },
    source: 'Common practice, no source. Each figure is read to half a millimetre.',
  },
  message: ({ right, left, sum, whole }) =>
    `R ${right} and L ${left} make ${sum} mm, and ${whole} mm was measured. Measure again.`,
  check: ({ evaluation: { values } }, report) => {
    for (const quantity of DISTANCES) {
      const { R, L, pair } = values.figures[quantity] ?? {};
      if (!R || !L || !pair || R.reading !== pair.reading || L.reading !== pair.reading) continue;
      const sum = tidy(R.value + L.value);
      if (isWithin(sum - pair.value, ALLOWED)) continue;
      const data = { right: R.value, left: L.value, sum, whole: pair.value };
      report(pair.place, data, { related: [R.place, L.place] });
    }
  },
};

const DISTANCES = ['pd', 'near-pd', 'optical-centres'] as const;
