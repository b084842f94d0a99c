import type { Eye } from '../../../grammar';
import type { PrismVector } from '../../../optics';
import { isLess, tidy } from '../../exact';
import { isSharedFreely, writtenPrism } from '../../measures/split-prism';
import { type Unwanted, unwantedOfEach } from '../../measures/unwanted-prism';
import { unsaidThinning } from '../../measures/wanted-prism';
import { EYES, type Order, type PerEye } from '../../model';
import { amountInWords, prismInWords } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';

/** Prism dioptres that both lenses may have in common before it is reported; across, as much as a pair may be off. */
const COMMON_UP = 1;
const COMMON_ACROSS = 0.67;

export const prismInBoth: Rule = {
  code: 'prism-in-both',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Both lenses turn the eyes the same way by prism that nobody ordered: more than 1 prism dioptre both up or both down, or more than 0.67 both to the right or left. It is taken from the prism that was measured, or from the places of both centres.',
    levels: 'A hint where thinning is usual and the vertical prism of both lenses is equal.',
    why: 'Between the eyes nothing is left of it, so the pair passes; but the wearer looks through all of it and holds the head up, down or aside. Optical centres that were never placed do this in strong lenses: 9 mm too low in +13.50 is 12 prism dioptres in each. Halves of the PD that were exchanged do it sideways.',
    example: { wrong: 'prism R 2.00 BD L 2.00 BD', right: 'prism R 0.25 BD L 0' },
    source:
      'ProFile ANZ, “heights matter beyond the multifocal”; the 1 and 0.67 prism dioptres are common practice, no source.',
  },
  message: (data) => {
    const { R, L, thinning } = data as unknown as Told;
    if (thinning)
      return `${each(R, 'R')}, ${each(L, 'L')}: equal in both lenses, so it is taken as prism thinning. Write \`thinning\` into the order to have it compared.`;
    return `${each(R, 'R')}, ${each(L, 'L')}. Nobody ordered this. The pair is balanced, but the wearer looks through it with both eyes.${isEqualUp(R, L) ? ' If it is thinning, write `thinning` into the order.' : ''}`;
  },
  check: ({ order, evaluation }, report) => {
    const unwanted = unwantedOfEach(order, evaluation.values);
    if (!unwanted) return;
    const { R, L } = unwanted;
    const thinned = R.measured && L.measured ? unsaidThinning(order, R.measured, L.measured) : 0;
    const isUp = !isFree(order, 'up') && isCommon(R.prism.up - thinned, L.prism.up - thinned, COMMON_UP);
    const isAcross = !isFree(order, 'right') && isCommon(R.prism.right, L.prism.right, COMMON_ACROSS);
    const isThinning = !isUp && !isAcross && isLess(COMMON_UP, Math.abs(thinned));
    if (!isUp && !isAcross && !isThinning) return;
    const level = isThinning ? 'hint' : whileItCounts(evaluation, R.reading, 'warning');
    const data: Told = { R, L, thinning: isThinning };
    report(R.place, { ...data }, { related: R.place === L.place ? [] : [L.place], level });
  },
};

interface Told extends PerEye<Unwanted> {
  readonly thinning: boolean;
}

const isCommon = (first: number, second: number, most: number): boolean =>
  first * second > 0 && isLess(most, Math.min(Math.abs(first), Math.abs(second)));

/** Prism that the lab may share as it likes may all lie to one side. */
const isFree = (order: Order, part: keyof PrismVector): boolean =>
  isSharedFreely(order) && EYES.some((eye) => tidy(writtenPrism(order, eye)[part]) !== 0);

const isEqualUp = (R: Unwanted, L: Unwanted): boolean => R.measured !== null && tidy(R.prism.up - L.prism.up) === 0;

/** Prism as it was measured; else where the centre stands, and what it makes there. */
function each({ measured, prism, out, up }: Unwanted, eye: Eye): string {
  if (measured) return `${eye} measures ${prismInWords(measured, eye)}`;
  const places = [
    out && `${amountInWords(out, 'mm')} ${out > 0 ? 'out' : 'in'}`,
    up && `${amountInWords(up, 'mm')} ${up > 0 ? 'high' : 'low'}`,
  ];
  return `${eye} centre ${places.filter(Boolean).join(' and ') || 'in place'}, which makes ${prismInWords(prism, eye)}`;
}
