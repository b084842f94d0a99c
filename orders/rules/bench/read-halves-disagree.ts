import { isLess, isWithin, tidy } from '../../exact';
import type { Measurement, Reading } from '../../model';
import type { Report, Rule } from '../rule';

/** Each half is read to half a millimetre. */
const ALLOWED = 1;

const DISTANCES = ['pd', 'near-pd', 'optical-centres'] as const;

export const readHalvesDisagree: Rule = {
  code: 'read-halves-disagree',
  family: 'bench',
  level: 'error',
  page: {
    levels: 'An error; an info in a reading that a later one follows.',
    checks:
      'A reading has a whole distance and halves that cannot both be: the halves do not make the whole by more than 1 mm, or one half is as long as the whole.',
    why: 'An eye word that was left out makes a whole of a half: `optical-centres 31 L 32`. Whatever is judged then is judged by the wrong figure.',
    example: { wrong: 'optical-centres 31 L 32', right: 'optical-centres R 31 L 32' },
    source: '20/20, “clinical tips”: take both and compare. The millimetre is common practice, no source.',
  },
  message: ({ right, left, whole }) =>
    right === null || left === null
      ? `One half is ${right ?? left} mm and the whole ${whole} mm. Is ${whole} for the other eye?`
      : `R ${right} and L ${left} make ${tidy(Number(right) + Number(left))} mm, not ${whole}. Measure again.`,
  check: ({ order: { readings } }, report) => {
    for (let at = 0; at < readings.length; at++) compare(readings[at] as Reading, at === readings.length - 1, report);
  },
};

function compare({ measurements }: Reading, isLast: boolean, report: Report): void {
  for (const quantity of DISTANCES) {
    let whole: Measurement | undefined;
    let right: number | null = null;
    let left: number | null = null;
    for (const one of measurements) {
      if (one.quantity !== quantity) continue;
      if (one.eye === null) whole ??= one;
      else if (one.eye === 'R') right ??= one.value as number;
      else left ??= one.value as number;
    }
    const half = right ?? left;
    if (!whole || half === null) continue;
    const all = whole.value as number;
    const agrees = right === null || left === null ? isLess(half, all) : isWithin(right + left - all, ALLOWED);
    if (!agrees) report(whole.place, { right, left, whole: all }, isLast ? {} : { level: 'info' });
  }
}
