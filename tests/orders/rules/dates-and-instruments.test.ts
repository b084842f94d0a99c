/** Dates, instruments and house limits that cannot be, and lines that stand in a block which cannot have them. */
import { describe, expect, test } from 'vitest';
import { type AnalysisOptions, analyse, evaluate } from '../../../orders';
import { dayOfChecking } from '../../../orders/day';
import { told } from '../../support/findings';
import { JOB, written } from '../../support/job';

const verdictOf = (text: string, options: AnalysisOptions = {}) =>
  analyse(text, options).blocks.find(({ evaluation }) => evaluation !== null)?.evaluation;

/** The job with other lines at its head. */
const under = (...head: readonly string[]): string => written({ ...JOB, head });
const FOC = (...lines: readonly string[]): string =>
  under('standard z80.1-2015', 'instrument FOC-A', '  reads-to 0.125', ...lines.map((line) => `  ${line}`));

function expectBarred(text: string, code: string, options: AnalysisOptions = {}): void {
  const found = verdictOf(text, options);
  expect(found, text).toMatchObject({ verdict: 'incomplete', reservations: [] });
  expect(found?.unresolved).toContain(code);
}

test('the job itself is a plain accept on the day on which it was read', () => {
  const found = verdictOf(written(JOB), { today: '2026-11-24' });
  expect(found).toMatchObject({ verdict: 'accept', reservations: [], unresolved: [] });
});

describe('a date', () => {
  test('in the future', () => {
    expectBarred(written(JOB), 'date-implausible', { today: '2026-11-23' });
    expect(told(written(JOB), 'date-implausible', { today: '2026-11-23' })).toEqual(['error [2026-11-24]']);
  });
  test('is not held against any day where none is given', () => {
    expect(told(written(JOB), 'date-implausible')).toEqual([]);
  });
  test('that outranks every later reading', () => {
    const failed = `${written(JOB)}\n  reading 2026-11-25\n    R -6.00 -0.75 x 022`.replace(
      'reading 2026-11-24',
      'reading 2062-11-24',
    );
    expect(verdictOf(failed)?.reservations).toContain('readings-out-of-order');
    expectBarred(failed, 'date-implausible', { today: '2026-12-01' });
  });
  test.each(['1926-11-24', '1949-12-31', '2126-11-24'])('of %s', (date) => {
    expectBarred(written(JOB).replace('2026-11-24', date), 'date-implausible');
  });
  test('on which a job is due may lie ahead', () => {
    const text = written({ ...JOB, order: [...JOB.order, 'due 2026-12-31'] });
    expect(told(text, 'date-implausible', { today: '2026-12-01' })).toEqual([]);
    expect(told(text.replace('2026-12-31', '1926-12-31'), 'date-implausible')).toEqual(['error [1926-12-31]']);
  });
  test('against the order of the lines', () => {
    const text = `${written(JOB)}\n  reading 2026-11-20\n    R -4.50 -0.75 x 022`;
    expect(told(text, 'readings-out-of-order')).toEqual(['warning [2026-11-20]']);
    expect(verdictOf(text)).toMatchObject({ verdict: 'accept', reservations: ['readings-out-of-order'] });
  });
  test('with an hour against the order of the lines', () => {
    const text = `${written(JOB)}\n  reading 2026-11-24 09:00\n    R -4.50 -0.75 x 022`;
    expect(told(text, 'readings-out-of-order')).toEqual(['warning [2026-11-24]']);
  });
});

describe('the day of checking', () => {
  const text = 'order A\n  R -1.00\n  L -1.00\n  reading 2999-01-01\n    R -1.00\n';
  test('of the library is that of the clock', () => {
    const before = process.env.LENTIL_TODAY;
    delete process.env.LENTIL_TODAY;
    try {
      const now = new Date();
      expect(dayOfChecking()).toMatch(new RegExp(`^${now.getFullYear()}-\\d\\d-\\d\\d$`));
      const ahead = text.replace('2999', String(now.getFullYear() + 2));
      const codes = (options: AnalysisOptions) =>
        evaluate(ahead, options as object).blocks.flatMap(({ findings }) => findings.map(({ code }) => code));
      expect(codes({})).toContain('date-implausible');
      expect(codes({ today: null })).not.toContain('date-implausible');
    } finally {
      process.env.LENTIL_TODAY = before;
    }
  });
  test.each([
    ['none', null],
    ['2020-02-29', '2020-02-29'],
  ])('may be said in the environment: %s', (said, expected) => {
    const before = process.env.LENTIL_TODAY;
    process.env.LENTIL_TODAY = said;
    try {
      expect(dayOfChecking()).toBe(expected);
    } finally {
      process.env.LENTIL_TODAY = before;
    }
  });
  test('of another day makes a kept result anew', () => {
    const { document } = analyse(written(JOB), { today: '2026-11-24' });
    expect(document.blocks.length).toBeGreaterThan(1);
    const again = analyse(written(JOB), { today: '2026-11-23' });
    expect(again.blocks.flatMap(({ findings }) => findings.map(({ code }) => code))).toContain('date-implausible');
  });
});

describe('an instrument', () => {
  test.each([
    ['uncertainty -5', '-5'],
    ['uncertainty 0', '0'],
    ['uncertainty 3', '3'],
    ['reads-to 0', '0'],
    ['reads-to -0.125', '-0.125'],
    ['reads-to 5', '5'],
    ['zero -3.00', '-3.00'],
    ['calibrated 2026-05-14 due 2026-05-01', '2026-05-01'],
  ])('with %s', (line, words) => {
    const text = FOC(line);
    expect(told(text, 'instrument-impossible')).toEqual([`error [${words}]`, 'error [FOC-A]']);
    expect(verdictOf(text)?.verdict).not.toBe('accept');
    expect(verdictOf(text)?.unresolved.includes('instrument-impossible') || verdictOf(text)?.verdict === 'reject').toBe(
      true,
    );
  });
  test('calibrated in the future', () => {
    const text = FOC('calibrated 2027-05-14 due 2028-05-14');
    expect(told(text, 'instrument-impossible', { today: '2026-11-24' })).toEqual([
      'error [2027-05-14]',
      'error [FOC-A]',
    ]);
    expect(told(text, 'instrument-impossible')).toEqual([]);
  });
  test.each([
    'uncertainty 0.06',
    'reads-to 0.01',
    'reads-to 0.25',
    'zero +0.03',
    'calibrated 2026-05-14 due 2027-05-14',
  ])('with %s is quiet', (line) => {
    expect(told(FOC(line), 'instrument-impossible')).toEqual([]);
  });
  test('a zero of the day that no drum has', () => {
    const text = written({ ...JOB, reading: [...JOB.reading, 'zero -5.00'] });
    expect(told(text, 'instrument-impossible')).toEqual(['error [-5.00]']);
  });
});

describe('a limit of the house', () => {
  const house = (limit: string): string =>
    under('standard house', 'tolerance house from z80.1-2015', `  ${limit}`, 'instrument FOC-A', '  reads-to 0.125');
  test.each(['power 0', 'power -0.10', 'axis 500', 'pd -2', 'prism 50', 'height 400', 'axis to -1 5'])(
    'of %s',
    (limit) => {
      const codes = analyse(house(limit)).blocks.flatMap(({ findings }) =>
        findings.filter(({ level }) => level === 'error'),
      );
      expect(codes).toHaveLength(2);
      expect(verdictOf(house(limit))).toMatchObject({ verdict: 'incomplete' });
    },
  );
  test.each(['power 0.10', 'axis to 0.25 10', 'pd 2.0'])('of %s is quiet', (limit) => {
    expect(told(house(limit), 'house-limit-impossible')).toEqual([]);
  });
});

describe('a line in a block that cannot have it', () => {
  test.each([
    'pd 63',
    'due 2026-09-01',
    'R -1.00',
    'add +2.00',
    'supply glazed',
    'order-line',
    'power 0.12',
    'again R -1.00',
  ])('%s in an instrument', (line) => {
    const codes = analyse(FOC(line)).blocks.flatMap(({ findings }) => findings);
    expect(codes.filter(({ level }) => level === 'error').length, line).toBeGreaterThan(0);
  });
  test('is told at its word', () => {
    expect(told(FOC('pd 63', 'due 2026-09-01'), 'line-misplaced')).toEqual(['error [pd]', 'error [due]']);
  });
  test.each([
    'make R',
    'kept L -2.00',
    'balance L',
    'R -1.00',
    'both -1.00',
    'rx R -1.00',
    'verification R -1.00',
    'previous R -1.00',
    'prism R 2 BI',
    'slab-off R 3.00',
    'add +2.00',
    'pd 63',
    'height 17',
    'remake-of QL-1',
    'confirmed adds-differ "x" "y" by KO',
    'ref "tray 7"',
    'decided accept by MT',
    'reads-to 0.125',
  ])('%s among the defaults holds for no order', (line) => {
    const text = under('standard z80.1-2015', 'defaults', `  ${line}`, 'instrument FOC-A', '  reads-to 0.125');
    expect(told(text, 'line-misplaced')).toHaveLength(1);
    const plain = verdictOf(under('standard z80.1-2015', 'instrument FOC-A', '  reads-to 0.125'));
    // What is lost among the defaults may have been meant for the order.
    expect(verdictOf(text)).toEqual({ ...plain, verdict: 'incomplete', unresolved: ['rests-on-unclear'] });
  });
  test.each([
    'design single-vision',
    'lens resin-1.50',
    'frame A 52 B 36 DBL 18',
    'supply glazed',
    'purpose child',
    'note x',
  ])('%s among the defaults is what they are for', (line) => {
    expect(told(under('defaults', `  ${line}`), 'line-misplaced')).toEqual([]);
  });
  test('a line of an order in a house set', () => {
    expect(told(under('tolerance house from z80.1-2015', '  design single-vision'), 'line-misplaced')).toEqual([
      'error [design]',
    ]);
  });
});
