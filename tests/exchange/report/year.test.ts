/** The report over a year of generated work, against what the generator knows, worked out another way. */
import { deviation, group, mean, quantile, sum } from 'd3-array';
import { expect, test } from 'vitest';
import { BENCH, isReplaced, LEAN, nextDay, type YearJob, yearOfWork } from '../../support/year-of-work';
import { reportOf } from './support';

const { jobs, files } = yearOfWork(20);
const report = reportOf(files, { bench: BENCH });

const isRead = ({ fault }: YearJob): boolean => fault !== 'unread';
const isReject = ({ fault }: YearJob): boolean => ['axis', 'power', 'pd'].includes(fault);
const read = jobs.filter(isRead);
const rejects = jobs.filter(isReject);
const count = (test: (job: YearJob) => boolean): number => jobs.filter(test).length;

const spreadOf = (values: readonly number[]) => ({ mean: mean(values), sd: deviation(values) });

test('all orders and files are counted', () => {
  expect(report.scope).toMatchObject({ files: 53, filesUnreadable: 0, orders: jobs.length, from: '2026-01-05' });
  expect(report.scope.standards).toEqual([{ name: 'z80.1-2015', orders: jobs.length }]);
});

test('first readings pass or fail as they were made, week by week', () => {
  const { weeks, ...all } = report.firstPass;
  const expected = { read: read.length, reject: rejects.length, incomplete: count(({ fault }) => fault === 'missing') };
  expect(all).toMatchObject(expected);
  expect(all.accept).toBe(count(({ fault }) => fault === 'none'));
  const byMonday = new Map<string, YearJob[]>();
  for (const job of read) {
    const date = new Date(`${job.day}T00:00:00Z`);
    date.setUTCDate(date.getUTCDate() - ((date.getUTCDay() + 6) % 7));
    const monday = date.toISOString().slice(0, 10);
    byMonday.set(monday, [...(byMonday.get(monday) ?? []), job]);
  }
  expect(weeks.map(({ from, read: seen, reject }) => [from, seen, reject])).toEqual(
    [...byMonday].sort().map(([from, list]) => [from, list.length, list.filter(isReject).length]),
  );
});

test('measures are ranked by how often they fail', () => {
  const of = (fault: YearJob['fault']) => count((job) => job.fault === fault);
  const counted = new Map(report.failures.measures.map(({ what, times }) => [what, times]));
  expect(counted).toEqual(
    new Map(
      [
        ['axis', of('axis')],
        ['power', of('power')],
        ['prism-horizontal', of('pd')],
      ].sort(([, a], [, b]) => Number(b) - Number(a)) as [string, number][],
    ),
  );
  const ranks = report.failures.measures.map(({ times }) => times);
  expect(ranks).toEqual(ranks.toSorted((a, b) => b - a));
  expect(report.failures.measures.at(-1)?.cumulative).toBe(1);
  expect(report.failures.causes[0]).toMatchObject({ what: 'cut-off-axis', times: of('axis') });
});

test('deviations of the power have the spread that was put in, in dioptres and in shares of 0.13 D', () => {
  const values = read.flatMap(({ sphere }) => [sphere.R, sphere.L]);
  const power = report.deviations.find(({ quantity }) => quantity === 'power');
  const { mean: middle, sd } = spreadOf(values);
  expect(power?.readings).toBe(values.length);
  expect(power?.deviation.mean).toBeCloseTo(middle as number, 4);
  expect(power?.deviation.sd).toBeCloseTo(sd as number, 4);
  expect(power?.deviation.median).toBeCloseTo(quantile(values, 0.5) as number, 2);
  expect(power?.outside).toMatchObject({ count: count(({ fault }) => fault === 'power'), of: values.length });
  // Pp and Ppk in dioptres between limits at -0.13 and +0.13, the textbook way.
  const capability = power?.inLimits?.capability;
  expect(capability?.pp).toBeCloseTo(0.26 / (6 * (sd as number)), 3);
  expect(capability?.ppk).toBeCloseTo((0.13 - Math.abs(middle as number)) / (3 * (sd as number)), 3);
  expect(power?.inLimits?.bins.reduce((sum, bin) => sum + bin.count, 0)).toBe(values.length);
});

test('deviations of the axis are those of the right and none of the left', () => {
  const values = read.flatMap(({ axis }) => [axis, 0]);
  const axis = report.deviations.find(({ quantity }) => quantity === 'axis');
  expect(axis?.deviation.mean).toBeCloseTo(mean(values) as number, 4);
  expect(axis?.deviation.sd).toBeCloseTo(deviation(values) as number, 4);
  expect(axis?.worst[0]).toMatchObject({ eye: 'R', deviation: Math.max(...values), limit: 3 });
  const first = jobs.find((job) => job.axis === Math.max(...values));
  expect(axis?.worst[0]?.order).toBe(first?.name);
});

test('the farthest outside lead to the line of their order', () => {
  const points = report.deviations.flatMap(({ worst }) => worst);
  expect(points.length).toBeGreaterThan(5);
  for (const { path, line, order } of points) expect(files[path]?.split('\n')[line - 1]).toBe(`order ${order}`);
});

test('an instrument leans by the difference of its mean to the mean of the others', () => {
  const meanOf = (list: readonly YearJob[]): number[] => list.map(({ sphere }) => (sphere.R + sphere.L) / 2);
  for (const { name, bias } of report.instruments) {
    const own = meanOf(read.filter((job) => job.with === name));
    const others = meanOf(read.filter((job) => job.with !== name));
    const power = bias.find(({ quantity }) => quantity === 'power');
    expect(power).toMatchObject({ readings: own.length, otherReadings: others.length });
    expect(power?.difference).toBeCloseTo((mean(own) as number) - (mean(others) as number), 3);
  }
  const b = report.instruments.find(({ name }) => name === 'FOC-B')?.bias.find(({ quantity }) => quantity === 'power');
  expect(b?.low as number).toBeGreaterThan(0);
  expect(b?.low as number).toBeLessThanOrEqual(LEAN / 100);
  expect(b?.high as number).toBeGreaterThanOrEqual(LEAN / 100 - 0.01);
});

test('the zero that wanders is seen to wander, and the others not', () => {
  const drifts = new Map(report.instruments.map(({ name, zero }) => [name, zero?.drift]));
  expect([drifts.get('FOC-B'), drifts.get('FOC-C')]).toEqual([0, 0]);
  const zeros = read
    .filter((job) => job.with === 'FOC-A')
    .flatMap((job) => [
      { day: job.day, zero: job.zero / 100 },
      ...(isReplaced(job) ? [{ day: nextDay(job.day), zero: job.zero / 100 }] : []),
    ]);
  const weeks = [
    ...group(zeros, ({ day }) => Math.floor((Date.parse(day) - Date.parse('2026-01-05')) / (7 * 86_400_000))),
  ];
  const points = weeks.map(([week, list]) => [week * 7, mean(list, ({ zero }) => zero) as number] as const);
  // Least squares written out: the sum of products of deviations over the sum of squares.
  const [dayMean, zeroMean] = [mean(points, ([day]) => day) as number, mean(points, ([, zero]) => zero) as number];
  const slope =
    sum(points, ([day, zero]) => (day - dayMean) * (zero - zeroMean)) / sum(points, ([day]) => (day - dayMean) ** 2);
  expect(drifts.get('FOC-A')).toBeCloseTo(slope * 30, 3);
  expect(report.instruments[0]?.zero).toMatchObject({ readings: zeros.length, least: 0, most: 0.06 });
  expect(report.instruments[0]?.zero?.mean).toBeCloseTo(mean(zeros, ({ zero }) => zero) as number, 4);
});

test('test lenses are held against what the instrument may be off by', () => {
  const rows = report.instruments.flatMap(({ name, reference }) =>
    reference.map(({ nominal, error, allowed, day }) => [name, day, nominal, error, allowed]),
  );
  // ISO 8598:1996, limits of indication: 0.06 D to 5 D, 0.09 D to 10 D (tables/focimeters.ts).
  expect(rows).toEqual([
    ['FOC-A', '2026-01-02', -10, 0.06, 0.09],
    ['FOC-A', '2026-01-02', 5, 0.02, 0.06],
    ['FOC-B', '2026-01-02', 5, 0.03, 0.06],
    ['FOC-C', '2025-07-01', -10, 0.3, 0.09],
  ]);
});

test('readings after the day of the check are counted', () => {
  const days = read
    .filter((job) => job.with === 'FOC-C')
    .flatMap((job) => [job.day, ...(isReplaced(job) ? [nextDay(job.day)] : [])]);
  const late = days.filter((day) => day > '2026-07-01');
  expect(report.instruments[2]).toMatchObject({
    name: 'FOC-C',
    overdue: true,
    readingsOverdue: late.length,
    readings: days.length,
  });
  expect(report.instruments[0]).toMatchObject({ overdue: false, readingsOverdue: 0 });
});

test('repeats have the spread that was put into them', () => {
  const pairs = jobs.flatMap(({ repeats }) => (repeats ? [repeats] : []));
  const all = report.repeatability.find(({ quantity, instrument, by }) => quantity === 'power' && !instrument && !by);
  const sd = Math.sqrt((mean(pairs, ([a, b]) => (a - b) ** 2) as number) / 2);
  expect(all).toMatchObject({ groups: pairs.length, readings: 2 * pairs.length });
  expect(all?.sd).toBeCloseTo(sd, 4);
  const byPerson = report.repeatability.filter(({ quantity, by }) => quantity === 'power' && by !== null);
  expect(byPerson.map(({ groups }) => groups).reduce((a, b) => a + b)).toBe(pairs.length);
});

test('operators have their own first readings', () => {
  for (const { by, read: seen, reject, readings } of report.operators) {
    expect(seen).toBe(read.filter((job) => job.by === by).length);
    expect(reject).toBe(rejects.filter((job) => job.by === by).length);
    expect(readings).toBeGreaterThan(seen);
  }
  expect(report.operators.map(({ by }) => by)).toEqual(['JL', 'KO', 'MT']);
});

test('what waits, what was replaced and what was accepted all the same', () => {
  const isOpen = (job: YearJob) => !isReplaced(job) && job.end !== 'accepted';
  const waiting = Object.fromEntries(report.open.waiting.map(({ state, orders }) => [state, orders]));
  expect(waiting).toEqual({
    unread: count(({ fault }) => fault === 'unread'),
    incomplete: count((job) => job.fault === 'missing' && isOpen(job)),
    reject: count((job) => isReject(job) && isOpen(job)),
  });
  expect(report.remakes).toMatchObject({ lensesReplaced: count(isReplaced), ordersReplaced: { of: jobs.length } });
  expect(report.remakes.acceptedOutside.count).toBe(
    count((job) => isReject(job) && !isReplaced(job) && job.end === 'accepted'),
  );
  for (const { ages, orders, undated } of report.open.waiting)
    expect(sum(ages, (one) => one.count) + undated).toBe(orders);
});

test('the same work gives the same bytes, and another day other ages only', () => {
  expect(JSON.stringify(reportOf(files, { bench: BENCH }))).toBe(JSON.stringify(report));
  const later = reportOf(files, { bench: BENCH, date: '2028-01-01' });
  expect(later.open.oldest[0]?.age).toBeGreaterThan(report.open.oldest[0]?.age as number);
  expect({ ...later, open: null, scope: null, instruments: null }).toEqual({
    ...report,
    open: null,
    scope: null,
    instruments: null,
  });
});
