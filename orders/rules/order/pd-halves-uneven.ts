import { isLess, tidy } from '../../exact';
import type { Distances } from '../../model';
import type { Report, Rule } from '../rule';

/** Faces are uneven by a millimetre or two; more than five is a slip far more often than a face. */
const MOST = 5;

export const pdHalvesUneven: Rule = {
  code: 'pd-halves-uneven',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'The PDs of the two eyes differ by more than 5 mm, for far or for near.',
    why: 'Noses stand a little to one side, by a millimetre or two. Halves of 27 and 36 put each centre 4.5 mm from where it would stand on an even face; one figure was probably misread.',
    example: { wrong: 'pd R 27 L 36', right: 'pd R 31 L 32' },
    source: 'Common practice, no source. The bound is ours.',
  },
  message: ({ right, left, apart }) =>
    `The PDs of the eyes are ${apart} mm apart: R ${right}, L ${left}. Are both right?`,
  needs: 'monocular',
  check: ({ order: { pd, nearPd } }, report) => {
    compare(pd, report);
    compare(nearPd, report);
  },
};

function compare({ R, L }: Distances, report: Report): void {
  if (!R || !L) return;
  const apart = tidy(Math.abs(R.value - L.value));
  if (isLess(MOST, apart)) report(R.place, { right: R.value, left: L.value, apart }, { related: [L.place] });
}
