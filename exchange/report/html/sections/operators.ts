import type { ReportJson } from '../../report-json';
import { intervalRows } from '../charts/interval-rows';
import { intervalOf, percent, shareOf, whole } from '../figures';
import { markup } from '../markup';
import { nothing, type Section, smallMark } from '../section';
import { table } from '../table';

/** Rows drawn; the table holds all. */
const MOST_DRAWN = 30;

export function operators({ operators: all, firstPass }: ReportJson): Section {
  const drawn = all.filter(({ read }) => read > 0).slice(0, MOST_DRAWN);
  const most = Math.max(...drawn.map(({ rejectRate: { high } }) => high ?? 0), 0.05);
  const overall = firstPass.rejectRate.rate ?? 0;
  return {
    id: 'operators',
    title: 'Operators',
    body:
      all.length === 0
        ? nothing('No reading says by whom it was taken.')
        : [
            markup`<p>Orders by the person who read them first. A high reject rate may mean difficult work, a careful eye or an instrument that is off; it is a reason to ask, and no judgement. Among forty people, one lies above all the others together by chance alone.</p>\n`,
            drawn.length === 0
              ? null
              : intervalRows(
                  drawn.map(({ by, rejectRate: { rate, low, high, small, of } }) => ({
                    name: by ?? 'nobody named',
                    value: rate ?? 0,
                    low,
                    high,
                    small,
                    said: `${percent(rate ?? 0)}, n = ${whole(of)}`,
                  })),
                  {
                    title: 'Reject rate at the first reading, by operator',
                    description: 'The figures stand in the table below',
                    line: { at: overall, name: `all: ${percent(overall)}` },
                    range: [0, most],
                    mark: (value) => `${Math.round(value * 1000) / 10} %`,
                  },
                ),
            table(
              [
                { title: 'Operator', cell: ({ by }) => by ?? 'nobody named' },
                { title: 'Readings', figures: true, cell: ({ readings }) => whole(readings) },
                { title: 'First read', figures: true, cell: ({ read }) => whole(read) },
                { title: 'Accepted', figures: true, cell: ({ accept }) => whole(accept) },
                { title: 'Rejected', figures: true, cell: ({ reject }) => whole(reject) },
                { title: 'Incomplete', figures: true, cell: ({ incomplete }) => whole(incomplete) },
                {
                  title: 'Reject rate',
                  figures: true,
                  cell: ({ rejectRate }) => [shareOf(rejectRate), smallMark(rejectRate.small)],
                },
                { title: '95 % interval', figures: true, cell: ({ rejectRate }) => intervalOf(rejectRate) },
              ],
              all,
              { caption: 'First readings by operator', tall: all.length > 20 },
            ),
          ],
  };
}
