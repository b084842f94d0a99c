import { daysBetween } from '../../calendar';
import type { Week } from '../../parts/verdicts';
import { times, whole } from '../figures';
import { type Markup, markup } from '../markup';
import { bar, dot, label, marksWithin, picture, rule, scaleFrom } from './picture';

const SIZE = { width: 760, height: 300 };
const LEFT = 48;
const RIGHT = 12;
/** The yield above, and below it how many orders it is the yield of. */
const YIELD = { top: 12, bottom: 190 };
const COUNT = { top: 222, bottom: 272 };

/** First-pass yield week by week with its interval, above the number of orders. */
export function weeksChart(weeks: readonly Week[]): Markup {
  const first = weeks[0]?.from ?? '';
  const days = weeks.map(({ from }) => daysBetween(first, from));
  const last = Math.max(...days, 7);
  // Half a week of room on both sides, so that the first and the last bar are whole.
  const x = scaleFrom([-5, last + 5], [LEFT, SIZE.width - RIGHT]);
  const lowest = Math.floor(Math.min(...weeks.map(({ yield: { low } }) => low ?? 1)) * 10) / 10;
  const y = scaleFrom([Math.min(lowest, 0.9), 1], [YIELD.bottom, YIELD.top]);
  const most = Math.max(...weeks.map(({ read }) => read), 1);
  const height = scaleFrom([0, most], [0, COUNT.bottom - COUNT.top]);
  const width = Math.max(1.5, Math.min(14, x(7) - x(0) - 2));
  const grid = marksWithin([Math.min(lowest, 0.9), 1], 5).map((mark) => [
    rule(LEFT, y(mark), SIZE.width - RIGHT, y(mark), 'grid'),
    label(LEFT - 6, y(mark) + 4, `${Math.round(mark * 100)} %`, 'end'),
  ]);
  const shown = weeks.flatMap((week, at) => {
    const { rate, low, high, small } = week.yield;
    return rate === null || low === null || high === null ? [] : [{ x: x(days[at] as number), rate, low, high, small }];
  });
  const line = shown.map((one) => `${one.x},${y(one.rate)}`).join(' ');
  const points = shown.map((one) => [
    rule(one.x, y(one.low), one.x, y(one.high), 'whisker'),
    dot(one.x, y(one.rate), one.small ? 'hollow' : 'point'),
  ]);
  const bars = weeks.map(({ read }, at) =>
    bar(x(days[at] as number) - width / 2, COUNT.bottom - height(read), width, height(read), 'bar'),
  );
  return picture(
    SIZE,
    {
      title: 'First-pass yield by week',
      description: `${times(weeks.length, 'week')}; the figures stand in the table below`,
    },
    [
      grid,
      markup`<polyline points="${line}" class="path"/>\n`,
      points,
      label(LEFT, COUNT.top - 8, `orders first read, at most ${whole(most)} a week`),
      rule(LEFT, COUNT.bottom, SIZE.width - RIGHT, COUNT.bottom, 'axis'),
      bars,
      dayMarks(weeks, (day) => x(daysBetween(first, day))),
    ],
  );
}

/** About eight Mondays under the axis. */
function dayMarks(weeks: readonly { readonly from: string }[], x: (day: string) => number): readonly Markup[] {
  const every = Math.max(1, Math.ceil(weeks.length / 8));
  return weeks.filter((_, at) => at % every === 0).map(({ from }) => label(x(from), SIZE.height - 8, from, 'middle'));
}
