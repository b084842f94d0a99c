import { daysBetween } from '../../calendar';
import type { ZeroWeek } from '../../parts/instruments';
import { signedFigure } from '../figures';
import { type Markup, markup } from '../markup';
import { dot, label, marksWithin, picture, roomy, rule, scaleFrom, type Words } from './picture';

const SIZE = { width: 360, height: 190 };
const LEFT = 52;
const RIGHT = 12;
const TOP = 10;
const BOTTOM = 150;

/** Nothing smaller than this is worth a taller picture: half of the finest step of a drum in eighths, dioptres. */
const LEAST = 0.06;

/** Mean zero of each week, with the least and the most of it. */
export function driftChart(weeks: readonly ZeroWeek[], words: Words): Markup {
  const first = weeks[0]?.from ?? '';
  const last = weeks.at(-1)?.from ?? first;
  const x = scaleFrom([0, Math.max(7, daysBetween(first, last))], [LEFT + 8, SIZE.width - RIGHT - 8]);
  const at = (day: string): number => x(daysBetween(first, day));
  const range = roomy(
    weeks.flatMap(({ least, most }) => [least, most]),
    LEAST,
  );
  const y = scaleFrom(range, [BOTTOM, TOP]);
  const marks = marksWithin(range, 5).map((mark) => [
    rule(LEFT, y(mark), SIZE.width - RIGHT, y(mark), 'grid'),
    label(LEFT - 6, y(mark) + 4, signedFigure(mark), 'end'),
  ]);
  const points = weeks.map(({ from, mean, least, most }) => [
    rule(at(from), y(least), at(from), y(most), 'whisker'),
    dot(at(from), y(mean), 'point small'),
  ]);
  return picture(SIZE, words, [
    marks,
    rule(LEFT, y(0), SIZE.width - RIGHT, y(0), 'axis'),
    markup`<polyline points="${weeks.map(({ from, mean }) => `${at(from)},${y(mean)}`).join(' ')}" class="path"/>\n`,
    points,
    label(LEFT, SIZE.height - 18, first),
    last === first ? null : label(SIZE.width - RIGHT, SIZE.height - 18, last, 'end'),
    label(SIZE.width / 2, SIZE.height - 4, 'zero in dioptres, mean and range of each week', 'middle', 'quiet'),
  ]);
}
