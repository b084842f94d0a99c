import { isWithin, tidy } from '../../exact';
import type { Distances } from '../../model';
import type { Report, Rule } from '../rule';

/** Halves are measured to half a millimetre. */
const ALLOWED = 0.5;

export const pdHalvesDisagree: Rule = {
  code: 'pd-halves-disagree',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The two monocular distances do not add up to the binocular one, by more than half a millimetre.',
    why: 'Both are written down so that each checks the other. When they disagree, one of the three figures is wrong.',
    example: { wrong: 'pd 63 R 31 L 31', right: 'pd 63 R 31.5 L 31.5' },
    source: '20/20, “clinical tips”: take both and compare. The half millimetre is common practice, no source.',
  },
  message: ({ right, left, sum, whole }) => `R ${right} and L ${left} make ${sum} mm, not ${whole}.`,
  needs: 'monocular',
  check: ({ order: { pd, nearPd } }, report) => {
    compare(pd, report);
    compare(nearPd, report);
  },
};

function compare({ binocular, R, L }: Distances, report: Report): void {
  if (!binocular || !R || !L) return;
  const sum = tidy(R.value + L.value);
  if (isWithin(sum - binocular.value, ALLOWED)) return;
  const data = { right: R.value, left: L.value, sum, whole: binocular.value };
  report(binocular.place, data, { related: [R.place, L.place] });
}
