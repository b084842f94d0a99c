/** Unwanted prism of each lens by itself: what an oracle says of it. */
import { type Both, EYES, matrixOf, strongest, type Toric, type Vector } from './lens';
import { printedSet } from './limits';
import { type Check, classOf } from './oracle';
import { unwantedPrisms } from './oracle-placing';
import { isMounted, type Known, type Pair } from './pair';

/** Judged where the set limits each lens; where only a total was read, for each way in which it may lie. */
export function lensPrismChecks(pair: Pair, known: Known): Check[] {
  const { supply } = pair;
  const tables = printedSet(pair.set).lensPrism.filter(
    (table) => table.supply === supply && table.lenses.includes(classOf(pair)),
  );
  const ways = isMounted(pair)
    ? unwantedPrisms(pair, known)
    : [{ R: pair.made.R.prism, L: pair.made.L.prism } satisfies Both<Vector>];
  return tables.flatMap(({ direction, rows, orMm }) =>
    ways.flatMap((way) =>
      EYES.flatMap((eye): Check[] => {
        if (direction === 'horizontal' && known.across === 'none') return [];
        if (direction === 'vertical' && known.up === 'none') return [];
        const { power, prism } = pair.ordered[eye];
        const part = (of: Vector): number =>
          Math.abs(direction === 'any' ? Math.hypot(of.right, of.up) : direction === 'horizontal' ? of.right : of.up);
        const row = rows.find(([end]) => part(prism) <= end + 1e-6);
        if (!row) return [];
        const [, amount, perDioptre] = row;
        const thinning = thinningOf(pair, way);
        const unwanted = { right: way[eye].right, up: way[eye].up - thinning };
        // An amount with a share of the power: of the strongest meridian, as in the account. One that may also be so many
        // millimetres: the prism these make along the error, since “in any direction” is said of them.
        const shifted = ((orMm ?? 0) / 10) * powerAlong(power, unwanted);
        const limit = Math.max(amount + perDioptre * strongest(power), shifted);
        return [{ of: 'prism', what: `lens ${eye}, ${direction}`, off: part(unwanted), limit }];
      }),
    ),
  );
}

/** Prism up or down that both progressives have in common thins them and is no error, unless thinning is said to be none. */
function thinningOf({ kind, noThinning }: Pair, { R, L }: Both<Vector>): number {
  if (kind !== 'progressive' || noThinning || R.up * L.up <= 0) return 0;
  return Math.abs(R.up) < Math.abs(L.up) ? R.up : L.up;
}

function powerAlong(lens: Toric, { right, up }: Vector): number {
  const size = Math.hypot(right, up) || 1;
  const [x, y] = [right / size, up / size];
  const { xx, xy, yy } = matrixOf(lens);
  return Math.abs(xx * x * x + 2 * xy * x * y + yy * y * y);
}
