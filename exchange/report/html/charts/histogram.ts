import type { Bin } from '../../statistics/counted';
import type { Markup } from '../markup';
import { bar, label, picture, rule, scaleFrom, type Words } from './picture';

const SIZE = { width: 360, height: 170 };
const LEFT = 10;
const RIGHT = 10;
const TOP = 22;
const BOTTOM = 136;

/** Deviations as shares of their limits: what is outside is hatched, so that it shows without colour. */
export function histogram(bins: readonly Bin[], sides: 'both' | 'above', words: Words): Markup {
  const [from, to] = [bins[0]?.from ?? 0, bins.at(-1)?.to ?? 1];
  const x = scaleFrom([from, to], [LEFT, SIZE.width - RIGHT]);
  const most = Math.max(...bins.map(({ count }) => count), 1);
  const height = scaleFrom([0, most], [0, BOTTOM - TOP]);
  const bars = bins.map((bin) => {
    const isOutside = (bin.from + bin.to) / 2 > 1 || (bin.from + bin.to) / 2 < -1;
    // One order outside among thousands inside still has to be seen.
    const tall = bin.count === 0 ? 0 : Math.max(2, height(bin.count));
    return bar(x(bin.from) + 0.5, BOTTOM - tall, x(bin.to) - x(bin.from) - 1, tall, isOutside ? 'outside' : 'bar');
  });
  const marks = sides === 'both' ? [-1, 0, 1] : [0, 1];
  const limits = marks
    .filter((mark) => mark !== 0)
    .map((mark) => [
      rule(x(mark), TOP - 8, x(mark), BOTTOM, 'limit'),
      label(x(mark), TOP - 10, 'limit', 'middle', 'quiet'),
    ]);
  const names: Readonly<Record<number, string>> = {
    [-1]: '\u2212100 %',
    0: '0',
    1: sides === 'both' ? '+100 %' : '100 %',
  };
  return picture(SIZE, words, [
    bars,
    rule(LEFT, BOTTOM, SIZE.width - RIGHT, BOTTOM, 'axis'),
    limits,
    marks.map((mark) =>
      label(x(mark), BOTTOM + 16, names[mark] ?? '', mark === 0 && sides === 'above' ? 'start' : 'middle'),
    ),
    label(SIZE.width / 2, BOTTOM + 32, 'deviation as a share of its limit', 'middle', 'quiet'),
  ]);
}
