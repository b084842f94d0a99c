import type { DeviationJson } from '../../parts/deviations';
import type { ReportJson } from '../../report-json';
import { histogram } from '../charts/histogram';
import {
  amount,
  intervalOf,
  measureName,
  percent,
  plainFigure,
  shareOf,
  signedAmount,
  signedFigure,
  times,
  whole,
} from '../figures';
import { type Markup, markup } from '../markup';
import { note, nothing, type Section, smallMark } from '../section';
import { table } from '../table';
import { type LinkTo, whereColumn } from '../where';

export function deviations({ deviations: all }: ReportJson, linkTo: LinkTo): Section {
  const limited = all.filter(({ inLimits }) => inLimits !== null);
  return {
    id: 'deviations',
    title: 'Deviations against their limits',
    body:
      all.length === 0
        ? nothing('No first reading holds a figure that could be compared with its order.')
        : [
            markup`<p>Read less ordered, at the first reading. Limits differ from order to order, so the pictures and the capability figures take each deviation as a share of its own limit: ±100 % is just inside. Bars at the ends also hold everything farther out. Prism is a size and has a limit on one side only.</p>\n`,
            markup`<div class="pictures">${limited.map(pictureOf)}</div>\n`,
            figuresTable(all),
            capabilityTable(limited),
            note(
              'Pp and Ppk use the spread of all readings together, so they speak of the whole work and not of what a process could do at its best (that would be Cp and Cpk). They mean what tables say of them only for figures spread like the normal distribution; prism and axis seldom are. The share outside counts each measure as judged, with eighths of a coarse instrument taken as inside.',
            ),
            sharesTable(limited, 'both'),
            sharesTable(limited, 'above'),
            worstTable(all, linkTo),
          ],
  };
}

function pictureOf(one: DeviationJson): Markup {
  const { quantity, inLimits, sides, readings, outside } = one;
  const name = measureName(quantity);
  return markup`<figure><figcaption><strong>${name}</strong> ${times(readings, 'reading')}, ${whole(outside.count)} outside${smallMark(one.small)}</figcaption>
${histogram(inLimits?.bins ?? [], sides, { title: `${name}: deviations as shares of their limits`, description: 'The figures stand in the tables below' })}</figure>
`;
}

const figuresTable = (all: readonly DeviationJson[]): Markup =>
  table(
    [
      { title: 'Measure', cell: ({ quantity, small }) => [measureName(quantity), smallMark(small)] },
      { title: 'Readings', figures: true, cell: ({ readings }) => whole(readings) },
      { title: 'Mean', figures: true, cell: (one) => inUnit(one, one.deviation.mean) },
      {
        title: 'SD',
        figures: true,
        cell: ({ deviation: { sd }, unit }) => (sd === null ? '\u2013' : amount(sd, unit)),
      },
      { title: 'Least', figures: true, cell: (one) => inUnit(one, one.deviation.least) },
      { title: '5 %', figures: true, cell: (one) => inUnit(one, one.deviation.p05) },
      { title: 'Median', figures: true, cell: (one) => inUnit(one, one.deviation.median) },
      { title: '95 %', figures: true, cell: (one) => inUnit(one, one.deviation.p95) },
      { title: 'Most', figures: true, cell: (one) => inUnit(one, one.deviation.most) },
    ],
    all,
    { caption: 'Deviations in their own units' },
  );

/** A size has no sign. */
const inUnit = ({ sides, unit }: Pick<DeviationJson, 'sides' | 'unit'>, value: number): string =>
  sides === 'both' ? signedAmount(value, unit) : amount(Math.abs(value), unit);

const capabilityTable = (limited: readonly DeviationJson[]): Markup =>
  table(
    [
      { title: 'Measure', cell: ({ quantity }) => measureName(quantity) },
      { title: 'Outside', figures: true, cell: ({ outside }) => `${whole(outside.count)} of ${whole(outside.of)}` },
      { title: 'Share outside', figures: true, cell: ({ outside }) => [shareOf(outside), smallMark(outside.small)] },
      { title: '95 % interval', figures: true, cell: ({ outside }) => intervalOf(outside) },
      {
        title: 'Mean in limits',
        figures: true,
        cell: ({ inLimits }) => (inLimits ? percent(inLimits.mean).replace('-', '\u2212') : '\u2013'),
      },
      { title: 'Pp', figures: true, cell: ({ inLimits }) => figureOf(inLimits?.capability?.pp) },
      {
        title: 'Ppk',
        figures: true,
        cell: ({ inLimits }) => [figureOf(inLimits?.capability?.ppk), smallMark(inLimits?.capability?.small ?? false)],
      },
      {
        title: '95 % interval',
        figures: true,
        cell: ({ inLimits }) => {
          const capability = inLimits?.capability;
          return capability ? `${plainFigure(capability.low)} to ${plainFigure(capability.high)}` : '\u2013';
        },
      },
    ],
    limited,
    { caption: 'How deviations fit between their limits' },
  );

const figureOf = (value: number | null | undefined): string => (value == null ? '\u2013' : plainFigure(value));

/** What the pictures draw: a row for each measure, a column for each bar. */
function sharesTable(limited: readonly DeviationJson[], sides: DeviationJson['sides']): Markup | null {
  const rows = limited.filter((one) => one.sides === sides);
  const bars = rows[0]?.inLimits?.bins ?? [];
  if (bars.length === 0) return null;
  return table(
    [
      { title: 'Measure', cell: ({ quantity }) => measureName(quantity) },
      ...bars.map(({ from, to }, at) => ({
        title: sides === 'both' ? signedFigure(50 * (from + to), 0) : plainFigure(50 * (from + to), 0),
        figures: true,
        cell: ({ inLimits }: DeviationJson) => whole(inLimits?.bins[at]?.count ?? 0),
      })),
    ],
    rows,
    {
      caption: `Number of readings by ${sides === 'both' ? 'deviation' : 'size'}, by the middle of each bar in percent of the limit`,
    },
  );
}

function worstTable(all: readonly DeviationJson[], linkTo: LinkTo): Markup | null {
  const points = all.flatMap((one) => one.worst.map((point) => ({ ...one, ...point })));
  if (points.length === 0) return null;
  return table(
    [
      {
        title: 'Measure',
        cell: ({ eye, quantity }) => (eye ? `${eye} ${measureName(quantity).toLowerCase()}` : measureName(quantity)),
      },
      { title: 'Deviation', figures: true, cell: (one) => inUnit(one, one.deviation) },
      { title: 'Limit', figures: true, cell: ({ limit, unit }) => amount(limit, unit) },
      { title: 'Order', cell: ({ order }) => order ?? '(no name)' },
      whereColumn(linkTo),
    ],
    points,
    { caption: 'Farthest outside, up to five of each measure', tall: true },
  );
}
