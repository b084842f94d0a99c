import type { ReportJson } from '../../report-json';
import { amount, measureName, whole } from '../figures';
import { markup } from '../markup';
import { nothing, type Section, smallMark } from '../section';
import { table } from '../table';

export const repeatability = ({ repeatability: all }: ReportJson): Section => ({
  id: 'repeatability',
  title: 'Repeatability',
  body:
    all.length === 0
      ? nothing('Nothing was read more than once: no line begins with “again”.')
      : [
          markup`<p>From lines that begin with “again”: the spread within what was read more than once. Two readings of the same thing lie nearer together than the repeatability limit 95 times in 100. Repeats that one person takes on purpose may agree better than everyday work.</p>\n`,
          table(
            [
              { title: 'Measure', cell: ({ quantity }) => measureName(quantity) },
              {
                title: 'Whose',
                cell: ({ instrument, by }) =>
                  instrument ? `on ${instrument}` : by ? `by ${by}` : markup`<strong>all</strong>`,
              },
              { title: 'Repeated', figures: true, cell: ({ groups, small }) => [whole(groups), smallMark(small)] },
              { title: 'Readings', figures: true, cell: ({ readings }) => whole(readings) },
              { title: 'SD within', figures: true, cell: ({ sd, unit }) => amount(sd, unit) },
              { title: 'Repeatability limit', figures: true, cell: ({ limit, unit }) => amount(limit, unit) },
            ],
            all,
            { caption: 'Spread within repeated readings', tall: all.length > 20 },
          ),
        ],
});
