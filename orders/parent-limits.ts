/** What a published set allows for a word of a house set, over all the rows that the word reaches. */
import type { Band, PlainLimit, PowerLimit, ToleranceSet } from '../tables';
import { bandInWords, isInBand } from './band';
import type { HouseSet } from './house';
import type { Unit } from './limits';

export interface ParentLimit {
  readonly amount: number;
  readonly unit: Unit;
  readonly row: string;
}

interface Row {
  readonly band: Band;
  /** The limit for a figure in the band; null where the set deliberately sets none. */
  readonly amount: (figure: number) => number | null;
  readonly unit: Unit;
  readonly row: string;
}

/**
 * Every limit of a set that a house line of this word stands beside, for an ordered figure.
 * @param figure size of the ordered cylinder for an axis, of the ordered figure otherwise
 */
export const parentLimits = (set: ToleranceSet, word: string, figure: number): readonly ParentLimit[] =>
  rowsOf(set, word).flatMap(({ band, amount, unit, row }) => {
    const most = isInBand(figure, band) ? amount(figure) : null;
    return most === null ? [] : [{ amount: most, unit, row }];
  });

/** Where a limit may change: the ends of all bands, and a thousandth above each. */
export function turningPoints(set: ToleranceSet, word: string, { limits }: HouseSet): readonly number[] {
  const bands = [
    ...rowsOf(set, word).map(({ band }) => band),
    ...limits.flatMap((limit) => (limit.word === word && limit.band ? [limit.band] : [])),
  ];
  const ends = bands.flatMap(({ atLeast, above, atMost, below }) => [atLeast, above, atMost, below]);
  const found = new Set([0, ...ends.filter((end) => end !== undefined)]);
  return [...found].sort((a, b) => a - b).flatMap((end) => [end, end + HAIR]);
}

const HAIR = 0.001;
const EVERYWHERE: Band = { atLeast: 0 };

function rowsOf(set: ToleranceSet, word: string): readonly Row[] {
  switch (word) {
    case 'power':
      return set.power.flatMap(({ rows }) =>
        rows.map(({ power, meridian: { limit } }) => rowOf(power, limit, `power ${bandInWords(power, 'D')}`)),
      );
    case 'cylinder':
      return set.power.flatMap(({ rows }) =>
        rows.flatMap((row) =>
          row.cylinder.map(({ cylinder, limit }) => rowOf(cylinder, limit, `cylinder ${bandInWords(cylinder, 'D')}`)),
        ),
      );
    case 'axis':
      return set.axis.flatMap(({ rows }) =>
        rows.map(({ cylinder, limit }) => rowOf(cylinder, limit, `axis, cylinder ${bandInWords(cylinder, 'D')}`)),
      );
    case 'add':
      return (set.add ?? []).flatMap(({ rows }) =>
        rows.map(({ add, limit }) => rowOf(add, limit, `add ${bandInWords(add, 'D')}`)),
      );
    case 'prism':
      return pairRows(set, 'prism');
    case 'pd':
      return pairRows(set, 'distance-pd');
    default:
      return PLAIN[word]?.flatMap((key) => plain(set[key] as PlainLimit | undefined, word)) ?? [];
  }
}

const rowOf = (band: Band, limit: PowerLimit, row: string): Row => ({
  band,
  unit: limit.kind === 'absolute' ? limit.unit : 'D',
  row,
  amount: (figure) => {
    if (limit.kind === 'not-defined') return null;
    return limit.kind === 'absolute' ? limit.amount : (limit.percent / 100) * figure;
  },
});

/**
 * Limits of a pair that are one figure: prism as prism, the PD of both eyes in millimetres. What hangs on the power of the
 * lenses, and the PD of one eye, has no like in a house set.
 */
const pairRows = (set: ToleranceSet, which: 'prism' | 'distance-pd'): readonly Row[] =>
  (set.pairPrism ?? []).flatMap(({ rows, component }) =>
    rows.flatMap(({ judged, limit }): Row[] => {
      const row = `${component} prism of a pair`;
      if (which === 'prism' && limit.kind === 'prism' && judged === 'prism-imbalance')
        return [{ band: EVERYWHERE, unit: 'prism', row, amount: () => limit.amount }];
      if (which === 'distance-pd' && limit.kind === 'shift' && judged === 'distance-pd')
        return [{ band: EVERYWHERE, unit: 'mm', row: 'PD of a pair', amount: () => limit.mm }];
      return [];
    }),
  );

const PLAIN: Readonly<Record<string, readonly (keyof ToleranceSet)[]>> = {
  'near-pd': ['segmentHorizontal'],
  height: ['segmentHeight', 'fittingHeight'],
  'height-difference': ['segmentHeightDifference', 'fittingHeightDifference'],
  segment: ['segmentSize'],
  'base-curve': ['baseCurve'],
  thickness: ['centreThickness'],
};

const plain = (found: PlainLimit | undefined, word: string): readonly Row[] =>
  found ? [rowOf(EVERYWHERE, found.limit, word.replaceAll('-', ' '))] : [];
