import { percent, whole } from '../figures';
import type { Markup } from '../markup';
import { bar, label, picture, rule, scaleFrom, type Words } from './picture';

export interface RankedBar {
  readonly name: string;
  readonly count: number;
  /** Share that this bar and those above it make, shown at the right; null shows none. */
  readonly cumulative: number | null;
}

const WIDTH = 760;
const ROW = 26;
const NAMES = 230;
const ENDS = 620;

/** Bars lying one below the other, the longest first. */
export function rankedBars(bars: readonly RankedBar[], words: Words): Markup {
  const most = Math.max(...bars.map(({ count }) => count), 1);
  const length = scaleFrom([0, most], [0, ENDS - NAMES - 50]);
  const isCumulative = bars.some(({ cumulative }) => cumulative !== null);
  const top = isCumulative ? 24 : 4;
  const height = top + bars.length * ROW + 4;
  const rows = bars.map(({ name, count, cumulative }, at) => {
    const y = top + at * ROW;
    return [
      label(NAMES - 8, y + 17, name, 'end'),
      bar(NAMES, y + 4, length(count), ROW - 8, 'bar'),
      label(NAMES + length(count) + 6, y + 17, whole(count)),
      cumulative === null ? null : label(WIDTH - 12, y + 17, percent(cumulative, 0), 'end'),
    ];
  });
  return picture({ width: WIDTH, height }, words, [
    isCumulative ? label(WIDTH - 12, 15, 'up to here', 'end', 'quiet') : null,
    rule(NAMES, top, NAMES, height - 4, 'axis'),
    rows,
  ]);
}
