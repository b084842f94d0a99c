import { sphericalEquivalent } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import type { OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import { figure } from '../../words';
import type { Rule } from '../rule';

export const basesApart: Rule = {
  code: 'bases-apart',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'The ordered base curves are further apart than the powers explain: more than 1.50 D and half of the difference between the two powers.',
    why: 'Lenses of about the same power on unlike curves magnify unlike, reflect unlike and do not sit alike in the frame. Mostly one of the two curves is a slip. Where unlike curves are meant, as against unlike images, it is worth a word with the laboratory.',
    example: { wrong: 'base-curve R 4.00 L 8.00', right: 'base-curve R 4.00 L 4.00' },
    source: 'The bound is common practice, no source.',
  },
  message: ({ right, left, powers }) =>
    `Base curves R ${figure(Number(right))} and L ${figure(Number(left))} are ${figure(Math.abs(Number(right) - Number(left)))} D apart, and the powers only ${figure(Number(powers))} D. Are unlike curves meant?`,
  check: ({ order: { lenses } }, report) => {
    const { R, L } = lenses;
    if (!R.baseCurve || !L.baseCurve || R.role === 'absent' || L.role === 'absent') return;
    const apart = tidy(Math.abs(R.baseCurve.value - L.baseCurve.value));
    if (!isLess(MOST, apart)) return;
    const [right, left] = [equivalent(R), equivalent(L)];
    if (right === null || left === null) return;
    const powers = tidy(Math.abs(right - left));
    if (!isLess(MOST + powers / 2, apart)) return;
    const data = { right: R.baseCurve.value, left: L.baseCurve.value, powers };
    report(L.baseCurve.place, data, { related: [R.baseCurve.place] });
  },
};

/** Dioptres. Common practice, no source. */
const MOST = 1.5;

/** Of the lens to be made, or of the one that stays or balances; dioptres. */
function equivalent(lens: OrderedLens): number | null {
  const power = usePower(lens)?.power ?? lens.kept?.power?.value ?? lens.balance?.power?.value;
  return power ? attempt(() => sphericalEquivalent(power)) : null;
}
