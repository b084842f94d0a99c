import type { AgeBucket, Waiting } from '../../parts/open-orders';
import type { ReportJson } from '../../report-json';
import { rankedBars } from '../charts/ranked-bars';
import { times, whole } from '../figures';
import { markup } from '../markup';
import { nothing, type Section } from '../section';
import { table } from '../table';
import { type LinkTo, whereColumn } from '../where';

const NAMES: Readonly<Record<Waiting, string>> = {
  unread: 'Not read',
  incomplete: 'Incomplete',
  reject: 'Refused',
};

export function waiting({ open, scope }: ReportJson, linkTo: LinkTo): Section {
  const orders = open.waiting.reduce((sum, one) => sum + one.orders, 0);
  const ages = open.waiting[0]?.ages ?? [];
  const bars = open.waiting.flatMap((one) =>
    one.ages.map((bucket) => ({
      name: `${NAMES[one.state]}, ${ageName(bucket)}`,
      count: bucket.count,
      cumulative: null,
    })),
  );
  const filled = bars.filter(({ count }) => count > 0);
  return {
    id: 'waiting',
    title: 'Orders that wait',
    body:
      orders === 0
        ? nothing('No order waits.')
        : [
            markup`<p>Orders without a person’s decision that are not read, not complete, or refused. Ages are counted to ${scope.date ?? 'no day, since no file holds a date'}${
              scope.dateGiven || !scope.date ? null : ', the newest day of a reading in these files'
            }: from the newest reading, or from the day on which an unread order is due.</p>\n`,
            filled.length === 0
              ? null
              : rankedBars(filled, {
                  title: 'Orders that wait, by age',
                  description: 'The figures stand in the table below',
                }),
            table(
              [
                { title: 'State', cell: ({ state }) => NAMES[state] },
                { title: 'Orders', figures: true, cell: (row) => whole(row.orders) },
                ...ages.map((bucket, at) => ({
                  title: ageName(bucket),
                  figures: true,
                  cell: (row: (typeof open.waiting)[number]) => whole(row.ages[at]?.count ?? 0),
                })),
                { title: 'Without a day', figures: true, cell: ({ undated }) => whole(undated) },
              ],
              open.waiting,
              { caption: 'Orders that wait, by age' },
            ),
            open.oldest.length === 0
              ? null
              : table(
                  [
                    { title: 'Order', cell: ({ order }) => order ?? '(no name)' },
                    { title: 'State', cell: ({ state }) => NAMES[state] },
                    { title: 'Since', cell: ({ day }) => day },
                    { title: 'Age', figures: true, cell: ({ age }) => times(age, 'day') },
                    whereColumn(linkTo),
                  ],
                  open.oldest,
                  { caption: `Waiting longest: ${times(open.oldest.length, 'order')}`, tall: true },
                ),
          ],
  };
}

function ageName({ from, to }: AgeBucket): string {
  if (from === null) return 'not due yet';
  return to === null ? `${from} days and more` : `${from} to ${to} days`;
}
