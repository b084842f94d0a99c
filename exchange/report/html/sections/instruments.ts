import type { BiasJson, InstrumentJson } from '../../parts/instruments';
import type { ReportJson } from '../../report-json';
import { driftChart } from '../charts/drift-chart';
import { intervalRows } from '../charts/interval-rows';
import { roomy } from '../charts/picture';
import { measureName, signedAmount, signedFigure, times, weekName, whole } from '../figures';
import { type Markup, markup } from '../markup';
import { note, nothing, type Section, smallMark } from '../section';
import { table } from '../table';

export function instruments({ instruments: all, scope }: ReportJson): Section {
  return {
    id: 'instruments',
    title: 'Instruments',
    body:
      all.length === 0
        ? nothing('No reading names an instrument, and none is declared.')
        : [checks(all, scope.date), zeros(all), references(all), biases(all)],
  };
}

const checks = (all: readonly InstrumentJson[], date: string | null): Markup =>
  table(
    [
      { title: 'Instrument', cell: ({ name }) => name },
      { title: 'Kind', cell: ({ kind }) => kind ?? '\u2013' },
      { title: 'Readings', figures: true, cell: ({ readings }) => whole(readings) },
      { title: 'Check due', cell: ({ due }) => due ?? 'not said' },
      {
        title: 'State',
        cell: ({ due, overdue }) => (overdue ? markup`<strong>overdue</strong>` : due ? 'in time' : '\u2013'),
      },
      { title: 'Readings past the day', figures: true, cell: ({ readingsOverdue }) => whole(readingsOverdue) },
    ],
    all,
    { caption: `Checks of the instruments${date ? `, on ${date}` : ''}` },
  );

function zeros(all: readonly InstrumentJson[]): readonly Markup[] {
  const read = all.flatMap(({ name, zero }) => (zero ? [{ name, zero }] : []));
  const title = markup`<h3>Zero over time</h3>\n`;
  if (read.length === 0) return [title, nothing('No reading says what its drum showed with nothing on the stop.')];
  const dated = read.filter(({ zero }) => zero.weeks.length > 0);
  return [
    title,
    markup`<p>What the drum showed with nothing on the stop, as written in the readings. It is taken off the powers that are judged; an instrument whose zero wanders should be seen to all the same.</p>\n`,
    markup`<div class="pictures">${dated.map(
      ({
        name,
        zero,
      }) => markup`<figure><figcaption><strong>${name}</strong> ${times(zero.readings, 'zero')}${smallMark(zero.small)}</figcaption>
${driftChart(zero.weeks, { title: `Zero of ${name} by week`, description: 'The figures stand in the table below' })}</figure>
`,
    )}</div>\n`,
    table(
      [
        { title: 'Instrument', cell: ({ name, zero }) => [name, smallMark(zero.small)] },
        { title: 'Zeros', figures: true, cell: ({ zero }) => whole(zero.readings) },
        { title: 'Mean', figures: true, cell: ({ zero }) => signedAmount(zero.mean, 'D') },
        { title: 'Least', figures: true, cell: ({ zero }) => signedAmount(zero.least, 'D') },
        { title: 'Most', figures: true, cell: ({ zero }) => signedAmount(zero.most, 'D') },
        {
          title: 'Drift in 30 days',
          figures: true,
          cell: ({ zero }) => (zero.drift === null ? '\u2013' : signedAmount(zero.drift, 'D')),
        },
      ],
      read,
      { caption: 'Zero of each instrument' },
    ),
    table(
      [
        { title: 'Instrument', cell: ({ name }) => name },
        { title: 'Week', cell: ({ week, from }) => markup`${weekName(week)} <span class="quiet">from ${from}</span>` },
        { title: 'Zeros', figures: true, cell: ({ readings }) => whole(readings) },
        { title: 'Mean', figures: true, cell: ({ mean }) => signedAmount(mean, 'D') },
        { title: 'Least', figures: true, cell: ({ least }) => signedAmount(least, 'D') },
        { title: 'Most', figures: true, cell: ({ most }) => signedAmount(most, 'D') },
      ],
      dated.flatMap(({ name, zero }) => zero.weeks.map((week) => ({ ...week, name }))),
      { caption: 'Zero by week', tall: true },
    ),
  ];
}

function references(all: readonly InstrumentJson[]): readonly Markup[] {
  const rows = all.flatMap(({ name, reference }) => reference.map((one) => ({ ...one, name })));
  const title = markup`<h3>Test lenses</h3>\n`;
  if (rows.length === 0) return [title, nothing('No instrument says what it read on a test lens.')];
  return [
    title,
    table(
      [
        { title: 'Instrument', cell: ({ name }) => name },
        { title: 'Calibrated', cell: ({ day }) => day ?? 'not said' },
        { title: 'Test lens', figures: true, cell: ({ nominal }) => signedAmount(nominal, 'D') },
        { title: 'Read', figures: true, cell: ({ read }) => signedAmount(read, 'D') },
        { title: 'Error', figures: true, cell: ({ error }) => signedAmount(error, 'D') },
        {
          title: 'May be off by',
          figures: true,
          cell: ({ allowed }) => (allowed === null ? '\u2013' : `${allowed.toFixed(2)} D`),
        },
        {
          title: 'State',
          cell: ({ error, allowed }) =>
            allowed === null
              ? '\u2013'
              : Math.abs(error) > allowed + 1e-9
                ? markup`<strong>outside</strong>`
                : 'inside',
        },
      ],
      rows,
      { caption: 'Readings of test lenses', tall: rows.length > 20 },
    ),
    note(
      '“May be off by” is the uncertainty stated for the instrument, or else the limit of indication that ISO 8598:1996 gives at that power.',
    ),
  ];
}

function biases(all: readonly InstrumentJson[]): readonly Markup[] {
  const rows = all.flatMap(({ name, bias }) => bias.map((one) => ({ ...one, name })));
  const title = markup`<h3>Each instrument against the others</h3>\n`;
  if (rows.length === 0) return [title, nothing('Fewer than two instruments have first readings to compare.')];
  const power = rows.filter(({ quantity }) => quantity === 'power');
  return [
    title,
    markup`<p>Mean deviation from the order on one instrument, less that on all others. Each first reading counts once, with the mean of its lenses. Instruments that are given different work differ for that reason alone.</p>\n`,
    power.length > 0 ? powerChart(power) : markup``,
    table(
      [
        { title: 'Instrument', cell: ({ name }) => name },
        { title: 'Measure', cell: ({ quantity }) => measureName(quantity) },
        { title: 'Readings', figures: true, cell: ({ readings, small }) => [whole(readings), smallMark(small)] },
        { title: 'Mean', figures: true, cell: ({ mean, unit }) => signedAmount(mean, unit) },
        { title: 'Others', figures: true, cell: ({ otherReadings }) => whole(otherReadings) },
        { title: 'Their mean', figures: true, cell: ({ otherMean, unit }) => signedAmount(otherMean, unit) },
        { title: 'Difference', figures: true, cell: ({ difference, unit }) => signedAmount(difference, unit) },
        { title: '95 % interval', figures: true, cell: intervalInWords },
      ],
      rows,
      { caption: 'Bias of each instrument against the others' },
    ),
  ];
}

const intervalInWords = ({ low, high, unit }: BiasJson): string =>
  low === null || high === null ? '\u2013' : `${signedAmount(low, unit)} to ${signedAmount(high, unit)}`;

const powerChart = (rows: readonly (BiasJson & { readonly name: string })[]): Markup =>
  intervalRows(
    rows.map(({ name, difference, low, high, small, unit, readings }) => ({
      name,
      value: difference,
      low,
      high,
      small,
      said: `${signedAmount(difference, unit)}, n = ${whole(readings)}`,
    })),
    {
      title: 'Power read on each instrument against the others, dioptres',
      description: 'The figures stand in the table below',
      line: { at: 0, name: 'as the others' },
      range: roomy(
        rows.flatMap(({ difference, low, high }) => [difference, low ?? difference, high ?? difference]),
        0.03,
      ),
      mark: (value) => `${signedFigure(value)} D`,
    },
  );
