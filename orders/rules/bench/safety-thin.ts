import { principalMeridians } from '../../../optics';
import { safetyThicknesses } from '../../../tables';
import { attempt } from '../../attempt';
import { isLess } from '../../exact';
import { leastForSafety } from '../../measures/safety';
import { usePower } from '../../power-to-make';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';

export const safetyThin: Rule = {
  code: 'safety-thin',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A lens for protection was measured thinner than a basic one may be, 3.0 mm or 2.5 mm from +3.00 D on, while the order names no least thickness.',
    why: 'From 2.0 mm on a lens is thick enough where it is impact-rated and marked so, and not otherwise. The order alone can say which of the two it is: `thickness min 2.0` or `thickness min 3.0`.',
    example: { wrong: 'thickness R min 2.4 L min 3.1', right: 'thickness R min 3.0 L min 3.1' },
    source: 'ANSI Z87.1, as retold in a laboratory manual and an article; the bought text rules.',
  },
  message: ({ thickness, basic, rated }) =>
    `Thinnest measured ${amountInWords(Number(thickness), 'mm')}: enough for an impact-rated lens (${amountInWords(Number(rated), 'mm')}), not for a basic one (${amountInWords(Number(basic), 'mm')}). Order the least thickness.`,
  check: ({ order, evaluation }, report) => {
    const { set, measures } = evaluation;
    const rated = set && leastForSafety(order, set);
    if (!rated) return;
    for (const { quantity, eye, outcome, read, place } of measures) {
      if (quantity !== 'min-thickness' || outcome !== 'pass' || !eye || read === null || !place) continue;
      const lens = order.lenses[eye];
      const made = usePower(lens);
      const meridians = made && attempt(() => principalMeridians(made.power));
      const strongest = meridians ? Math.max(meridians[0].power, meridians[1].power) : 0;
      const basic = basicFor(strongest);
      if (!lens.thickness.min && isLess(read, basic)) report(place, { thickness: read, basic, rated }, { eye });
    }
  },
};

/** Millimetres, by the more plus of the principal powers. */
function basicFor(strongest: number): number {
  const bounds = safetyThicknesses.filter(({ rating, power }) => {
    if (rating !== 'basic') return false;
    return isWithinBand(strongest, power);
  });
  return Math.max(...bounds.map(({ atLeast }) => atLeast));
}

function isWithinBand(power: number, band: (typeof safetyThicknesses)[number]['power']): boolean {
  if (!band) return true;
  if (band.atLeast !== undefined && isLess(power, band.atLeast)) return false;
  return band.below === undefined || isLess(power, band.below);
}
