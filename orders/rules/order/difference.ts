import { blurStrength, difference, imbalance, type Power, type PrismVector } from '../../../optics';
import { attempt } from '../../attempt';

/** How far two lenses are apart, dioptres, as the length of the power vector between them; null where that cannot be said. */
export const powersApart = (first: Power, second: Power): number | null =>
  attempt(() => blurStrength(difference(first, second)));

/** How far the prism between the eyes of two pairs is apart, prism dioptres: prism may be shared without being changed. */
export function pairsApart(
  first: Readonly<Record<'R' | 'L', PrismVector>>,
  second: Readonly<Record<'R' | 'L', PrismVector>>,
): number | null {
  return attempt(() => {
    const [a, b] = [imbalance(first.R, first.L), imbalance(second.R, second.L)];
    return Math.hypot(a.horizontal - b.horizontal, a.vertical - b.vertical);
  });
}
