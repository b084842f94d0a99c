/** What counts as a first pass, and odd orders that a folder of real work holds. */
import { describe, expect, test } from 'vitest';
import type { ReportJson } from '../../../exchange';
import { pair } from '../../support/judged';
import { reportOf } from './support';

const ORDER = ['R -1.50 -1.00 x 090', 'L -1.50 -1.00 x 090', 'pd 64', 'frame A 51 B 35 DBL 18 ED 53'];
const GOOD = ['R -1.50 -1.00 x 090', 'L -1.50 -1.00 x 090', 'pd 64', 'prism R 0 L 0'];
const TURNED = ['R -1.50 -1.00 x 100', ...GOOD.slice(1)];

/** An order with readings, each its head and its lines. */
const order = (...readings: readonly (readonly [head: string, lines: readonly string[]])[]): string =>
  [
    'standard z80.1-2015',
    'order T-1',
    ...ORDER.map((line) => `  ${line}`),
    ...readings.flatMap(([head, lines]) => [`  reading ${head}`, ...lines.map((line) => `    ${line}`)]),
  ].join('\n');

const reportOn = (text: string): ReportJson => reportOf({ 'a.lentil': text });

function checkFirstPass(text: string, verdict: 'accept' | 'reject' | 'incomplete' | 'unread'): void {
  const { accept, reject, incomplete, read } = reportOn(text).firstPass;
  expect({ accept, reject, incomplete, unread: 1 - read }).toEqual({
    ...{ accept: 0, reject: 0, incomplete: 0, unread: 0 },
    [verdict]: 1,
  });
}

describe('the first pass', () => {
  test.each([
    ['is the only reading', order(['2026-11-24', GOOD]), 'accept'],
    ['is refused, whatever was read later', order(['2026-11-23', TURNED], ['2026-11-24', GOOD]), 'reject'],
    ['is accepted, whatever was read later', order(['2026-11-23', GOOD], ['2026-11-24', TURNED]), 'accept'],
    ['is the earliest by date, not by line', order(['2026-11-24', GOOD], ['2026-11-23', TURNED]), 'reject'],
    ['ends where a lens was replaced', order(['2026-11-24', [...TURNED, 'replaced R "axis"', ...GOOD]]), 'reject'],
    ['is whole where nothing was read before', order(['2026-11-24', ['replaced R "broken"', ...GOOD]]), 'accept'],
    ['is no reading before glazing', order(['2026-11-23 stage edged', TURNED], ['2026-11-24', GOOD]), 'accept'],
    ['is none where only the edged lens was read', order(['2026-11-23 stage edged', TURNED]), 'unread'],
    ['lacks what a later reading brings', order(['2026-11-23', GOOD.slice(0, 2)], ['2026-11-24', GOOD]), 'incomplete'],
    ['is not changed by a decision', order(['2026-11-24', [...TURNED, 'decided accept by MT "agreed"']]), 'reject'],
    ['is none without a reading', order(), 'unread'],
  ] as const)('%s', (_, text, verdict) => checkFirstPass(text, verdict));

  test('of lenses that are not glazed may be of any stage', () => {
    const uncut = order(['2026-11-23 stage uncut', ['R -1.50 -1.00 x 090', 'L -2.50 -1.00 x 090']]).replace(
      '  frame A 51 B 35 DBL 18 ED 53',
      '  supply uncut',
    );
    checkFirstPass(uncut, 'reject');
  });

  test('gives its failures and its cause also when the lens was replaced since', () => {
    const { failures, remakes } = reportOn(
      order(['2026-11-23', TURNED], ['2026-11-24', ['replaced R "axis"', ...GOOD]]),
    );
    expect(failures.measures.map(({ what }) => what)).toEqual(['axis']);
    expect(failures.causes.map(({ what }) => what)).toContain('cut-off-axis');
    expect(remakes).toMatchObject({ lensesReplaced: 1, reasons: [{ why: 'axis', count: 1 }] });
  });
});

test('readings without date, name or instrument are counted as such', () => {
  const { firstPass, operators, instruments, scope } = reportOn(order(['', GOOD]));
  expect(firstPass).toMatchObject({ read: 1, weeks: [], undated: { read: 1, accept: 1 } });
  expect(operators).toMatchObject([{ by: null, readings: 1, read: 1 }]);
  expect(instruments).toEqual([]);
  expect(scope).toMatchObject({ from: null, to: null, date: null });
});

test('orders without a standard are read and not judged', () => {
  const { scope, firstPass, deviations } = reportOn(order(['2026-11-24', TURNED]).replace('standard z80.1-2015\n', ''));
  expect(scope.standards).toEqual([{ name: null, orders: 1 }]);
  expect(firstPass).toMatchObject({ read: 1, incomplete: 1 });
  expect(deviations).toEqual([]);
});

test('a line read on another instrument is of that one', () => {
  const on = (with_: string) => ['R -1.40 -1.00 x 090 with FOC-B', `L -1.50 -1.00 x 090${with_}`, 'pd 64'];
  const { instruments } = reportOn(order(['2026-11-24 with FOC-A', on('')]));
  expect(instruments.map(({ name, readings }) => [name, readings])).toEqual([
    ['FOC-A', 1],
    ['FOC-B', 1],
  ]);
  const power = instruments[1]?.bias.find(({ quantity }) => quantity === 'power');
  expect(power).toMatchObject({ readings: 1, mean: 0.1, otherReadings: 1, otherMean: 0, low: null, small: true });
});

describe('orders that wait', () => {
  const waitingOf = (text: string, date: string) => reportOf({ 'a.lentil': text }, { date }).open;

  test.each([
    ['the day itself', '2026-11-24', 0],
    ['a week later', '2026-12-01', 7],
    ['over the turn of the year', '2027-01-01', 38],
  ])('are aged from their newest reading: %s', (_, date, age) => {
    const { oldest } = waitingOf(order(['2026-11-20', GOOD.slice(0, 1)], ['2026-11-24', GOOD.slice(1, 2)]), date);
    expect(oldest).toMatchObject([
      { state: 'incomplete', day: '2026-11-24', age, order: 'T-1', path: 'a.lentil', line: 2 },
    ]);
  });

  test('are aged from the day they are due when not read, and are not late before it', () => {
    const due = order().replace('  pd 64', '  pd 64\n  due 2026-12-01');
    expect(waitingOf(due, '2026-11-25').waiting[0]).toMatchObject({ state: 'unread', orders: 1, undated: 0 });
    expect(waitingOf(due, '2026-11-25').waiting[0]?.ages[0]).toEqual({ from: null, to: -1, count: 1 });
    expect(waitingOf(due, '2026-11-25').oldest).toEqual([]);
    expect(waitingOf(due, '2026-12-03').oldest[0]?.age).toBe(2);
    expect(waitingOf(order(), '2026-12-03').waiting[0]).toMatchObject({ orders: 1, undated: 1 });
  });

  test('wait no longer once a person has decided', () => {
    const text = order(['2026-11-24', [...TURNED, 'decided reject by MT']]);
    expect(waitingOf(text, '2026-12-01').waiting.map(({ orders }) => orders)).toEqual([0, 0, 0]);
  });

  test('are listed by the twenty-five that have waited longest, however many there are', () => {
    const files = Object.fromEntries(
      Array.from({ length: 600 }, (_, at) => {
        const day = new Date(Date.UTC(2026, 0, 1 + ((at * 7) % 300))).toISOString().slice(0, 10);
        return [`${at}.lentil`, pair(['R -1.00', 'L -1.00'], ['R -1.00']).replace('2026-11-24', day)];
      }),
    );
    const { oldest, waiting } = reportOf(files, { date: '2027-01-01' }).open;
    expect(waiting[1]?.orders).toBe(600);
    expect(oldest).toHaveLength(25);
    expect(oldest.map(({ age }) => age)).toEqual(oldest.map(({ age }) => age).toSorted((a, b) => b - a));
    expect(oldest[0]?.age).toBe(365);
  });
});

test('remakes and decisions are counted', () => {
  const text = [
    order(['2026-11-24', [...GOOD, 'decided remake R']]).replace('  pd 64', '  pd 64\n  remake-of T-0 "axis"'),
    order(['2026-11-24', [...TURNED, 'decided accept by MT "agreed"']]),
    order(['2026-11-24', [...GOOD, 'decided reject by MT "scratch"']]),
    order(['2026-11-24', TURNED], ['2026-11-25', GOOD]),
  ].join('\n');
  const { remakes } = reportOn(text);
  expect(remakes.remakeOrders).toMatchObject({ count: 1, of: 4 });
  expect(remakes.reworkUnsaid).toMatchObject({ count: 1, of: 4 });
  expect(remakes.decidedRemake).toMatchObject({ count: 1 });
  expect(remakes.acceptedOutside).toMatchObject({ count: 1 });
  expect(remakes.refusedInside).toMatchObject({ count: 1 });
});

test('nothing at all gives a report of nothing', () => {
  const report = reportOf({});
  expect(report.firstPass).toMatchObject({ read: 0, yield: { rate: null } });
  expect(report).toMatchObject({ deviations: [], instruments: [], operators: [] });
});
