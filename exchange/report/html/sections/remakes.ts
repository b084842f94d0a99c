import type { ReportJson } from '../../report-json';
import type { Rate } from '../../statistics/rate';
import { intervalOf, shareOf, times, whole } from '../figures';
import { note, type Section, smallMark } from '../section';
import { table } from '../table';

export function remakes({ remakes: one }: ReportJson): Section {
  const rows: readonly { readonly what: string; readonly rate: Rate }[] = [
    { what: 'Orders that repeat another (remake-of)', rate: one.remakeOrders },
    { what: 'Orders in which a lens was replaced', rate: one.ordersReplaced },
    { what: 'Orders decided to be made again', rate: one.decidedRemake },
    { what: 'Accepted by a person although outside a limit', rate: one.acceptedOutside },
    { what: 'Refused by a person although inside', rate: one.refusedInside },
    { what: 'Accepted on a later reading, without a word of what was done', rate: one.reworkUnsaid },
  ];
  return {
    id: 'remakes',
    title: 'Remakes and decisions',
    body: [
      table(
        [
          { title: 'What', cell: ({ what }) => what },
          { title: 'Orders', figures: true, cell: ({ rate }) => `${whole(rate.count)} of ${whole(rate.of)}` },
          { title: 'Share', figures: true, cell: ({ rate }) => [shareOf(rate), smallMark(rate.small)] },
          { title: '95 % interval', figures: true, cell: ({ rate }) => intervalOf(rate) },
        ],
        rows,
        { caption: 'What was made again and what people decided' },
      ),
      note(`${times(one.lensesReplaced, 'lens was', 'lenses were')} replaced in all.`),
      one.reasons.length === 0
        ? null
        : table(
            [
              { title: 'Reason', cell: ({ why }) => why },
              { title: 'Times', figures: true, cell: ({ count }) => whole(count) },
            ],
            one.reasons,
            { caption: 'Reasons as written, most frequent first', tall: one.reasons.length > 15 },
          ),
    ],
  };
}
