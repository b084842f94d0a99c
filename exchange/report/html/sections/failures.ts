import type { Ranked } from '../../parts/failures';
import type { ReportJson } from '../../report-json';
import { rankedBars } from '../charts/ranked-bars';
import { causeName, intervalOf, measureName, percent, shareOf, times, whole } from '../figures';
import { type Markup, markup } from '../markup';
import { note, nothing, type Section, smallMark } from '../section';
import { table } from '../table';

export function failures({ failures: { orders, measures, causes, unexplained } }: ReportJson): Section {
  return {
    id: 'failures',
    title: 'What fails, and why',
    body:
      orders === 0
        ? nothing('No order was rejected when first read.')
        : [
            markup`<h3>Failing measures</h3>\n`,
            markup`<p>Of ${times(orders, 'order')} rejected when first read. Bars count every failure; an order may fail in both lenses and in several measures.</p>\n`,
            ranking(measures, measureName, 'Failing measures, most frequent first'),
            markup`<h3 id="causes">Probable causes</h3>\n`,
            markup`<p>Told where the failing figures fit one story, such as a turned lens or exchanged eyes. Where several fit alike, each counts. No cause was found for ${whole(unexplained.count)} of ${times(unexplained.of, 'order')} (${shareOf(unexplained)}, 95 % interval ${intervalOf(unexplained)}).</p>\n`,
            causes.length === 0
              ? nothing('No cause was found.')
              : ranking(causes, causeName, 'Probable causes, most frequent first'),
            causes.length === 0
              ? null
              : note(
                  markup`<code>lentil explain</code> with the code of a cause, such as <code>lens-turned</code>, says what it means.`,
                ),
          ],
  };
}

const ranking = (ranked: readonly Ranked[], name: (what: string) => string, caption: string): readonly Markup[] => [
  rankedBars(
    ranked.map(({ what, times: count, cumulative }) => ({ name: name(what), count, cumulative })),
    { title: caption, description: 'The figures stand in the table below' },
  ),
  table(
    [
      { title: 'What', cell: ({ what }) => name(what) },
      { title: 'Times', figures: true, cell: ({ times: count }) => whole(count) },
      { title: 'Up to here', figures: true, cell: ({ cumulative }) => percent(cumulative, 0) },
      { title: 'Orders', figures: true, cell: ({ orders }) => `${whole(orders.count)} of ${whole(orders.of)}` },
      { title: 'Share of rejects', figures: true, cell: ({ orders }) => [shareOf(orders), smallMark(orders.small)] },
      { title: '95 % interval', figures: true, cell: ({ orders }) => intervalOf(orders) },
    ],
    ranked,
    { caption },
  ),
];
