import { isWithin } from '../../exact';
import type { Measure, Repeat } from '../../measures/measure';

/** Whether repeats lie so far apart that their mean says nothing. */
export const areApart = ({ because }: Measure): boolean => because === 'spread';

/** Whether it is not judged since repeats of another figure of the same lens do. */
export const isBesideApart = ({ because }: Measure): boolean => because === 'beside-spread';

/**
 * The one reading of three or more that does not fit: further from the median of the others than the limit, while the
 * others agree among themselves. Null where there is none, and where it could be either.
 */
export function outlierOf({ repeats, limit }: Measure): Repeat | null {
  const most = limit?.amount ?? null;
  if (repeats.length < 3 || most === null) return null;
  const odd = repeats.filter((one) => {
    const others = repeats.filter((other) => other !== one).map(({ deviation }) => deviation);
    const agree = isWithin(Math.max(...others) - Math.min(...others), most);
    return agree && !isWithin(one.deviation - median(others), most);
  });
  return odd.length === 1 ? (odd[0] ?? null) : null;
}

function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.ceil((sorted.length - 1) / 2)]];
  return ((low ?? 0) + (high ?? 0)) / 2;
}
