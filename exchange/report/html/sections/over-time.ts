import type { Passed, Week } from '../../parts/verdicts';
import type { ReportJson } from '../../report-json';
import { weeksChart } from '../charts/weeks-chart';
import { intervalOf, shareOf, times, weekName, whole } from '../figures';
import { markup } from '../markup';
import { note, nothing, type Section, smallMark } from '../section';
import { table } from '../table';

/** Weeks drawn and listed; the JSON form holds all of them. */
const MOST_WEEKS = 105;

export function overTime({ firstPass }: ReportJson): Section {
  const weeks = firstPass.weeks.slice(-MOST_WEEKS);
  const left = firstPass.weeks.length - weeks.length;
  const rows: readonly (Passed & { readonly name: string; readonly from?: string })[] = [
    ...weeks.map((week: Week) => ({ ...week, name: weekName(week.week) })),
    ...(firstPass.undated.read > 0 ? [{ ...firstPass.undated, name: 'Without a date' }] : []),
    { ...firstPass, name: 'All' },
  ];
  return {
    id: 'over-time',
    title: 'Yield and rejects over time',
    body: [
      markup`<p>Each order counts once, in the week of its first final reading, with the verdict of that reading alone. What was read anew, replaced or decided later does not change it. “Incomplete” means that nothing was outside its limit and something called for was missing or could not be judged; such an order counts among those read, and neither as accepted nor as rejected.</p>\n`,
      left > 0
        ? note(`Shown are the latest ${MOST_WEEKS} weeks; ${times(left, 'earlier week')} stand in the JSON form.`)
        : null,
      weeks.length === 0
        ? nothing('No order has a dated first reading.')
        : [
            weeksChart(weeks),
            note('Dots: yield, with its 95 % interval. Hollow dots: fewer than 30 orders in that week.'),
          ],
      firstPass.read === 0
        ? null
        : table(
            [
              { title: 'Week', cell: ({ name }) => name },
              { title: 'From', cell: ({ from }) => from ?? '\u2013' },
              { title: 'First read', figures: true, cell: ({ read }) => whole(read) },
              { title: 'Accepted', figures: true, cell: ({ accept }) => whole(accept) },
              { title: 'Rejected', figures: true, cell: ({ reject }) => whole(reject) },
              { title: 'Incomplete', figures: true, cell: ({ incomplete }) => whole(incomplete) },
              { title: 'Yield', figures: true, cell: (row) => [shareOf(row.yield), smallMark(row.yield.small)] },
              { title: '95 % interval', figures: true, cell: (row) => intervalOf(row.yield) },
              { title: 'Reject rate', figures: true, cell: (row) => shareOf(row.rejectRate) },
              { title: '95 % interval', figures: true, cell: (row) => intervalOf(row.rejectRate) },
            ],
            rows,
            { caption: 'First readings by week', tall: true },
          ),
    ],
  };
}
