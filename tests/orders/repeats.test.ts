/** Repeated readings, and readings that the instrument cannot tell from their limit. */
import { describe, expect, test } from 'vitest';
import { analyse, type GuardBand, type Outcome, ruleOf } from '../../orders';
import { alarms, messages, told } from '../support/findings';
import { JOB, read, written } from '../support/job';
import { judged, measureOf, pair } from '../support/judged';

const order = ['R -2.00 -1.00 x 090', 'L -1.00', 'pd 63', 'frame A 50 DBL 18'];
const readings = (...lines: readonly string[]): string => pair(order, [...lines, 'L -1.00', 'prism R 0 L 0']);

describe('the mean of repeats counts', () => {
  test('powers as vectors, axes round the half circle', () => {
    const text = pair(['R -2.00 -1.00 x 180', 'L -1.00'], ['R -2.00 -1.00 x 002', 'again R -2.00 -1.00 x 178']);
    expect(measureOf(text, 'axis', 'R')).toMatchObject({ read: 180, deviation: 0, spread: 4, outcome: 'not-judged' });
    const near = pair(['R -2.00 -1.00 x 180', 'L -1.00'], ['R -2.00 -1.00 x 001', 'again R -2.00 -1.00 x 179']);
    expect(measureOf(near, 'axis', 'R')).toMatchObject({ read: 180, deviation: 0, spread: 2, outcome: 'pass' });
  });

  test('each of them is kept, with its deviation and its place', () => {
    const power = measureOf(readings('R -2.00 -1.00 x 090', 'again R -2.06 -1.00 x 090'), 'power', 'R');
    expect(power.repeats.map((one) => [one.read, one.deviation, one.place.line])).toEqual([
      [-3, 0, 6],
      [-3.06, -0.06, 7],
    ]);
  });

  test('sums over both eyes are made reading by reading', () => {
    const pd = measureOf(
      pair(['R -4.00', 'L -4.00', 'pd 63', 'frame A 50 DBL 18'], ['pd R 31 L 32', 'again pd R 32 L 33']),
      'pd',
    );
    expect([pd.read, pd.spread, pd.repeats.map(({ read: one }) => one)]).toEqual([64, 2, [63, 65]]);
  });

  test('a single reading has no spread and no repeats', () => {
    expect(measureOf(readings('R -2.00 -1.00 x 090'), 'power', 'R')).toMatchObject({ spread: null, repeats: [] });
  });
});

describe('readings apart', () => {
  test.each([
    // Printed limit 0.13: a spread of 0.13 is judged, one of 0.14 is not.
    [['R -2.00 -1.00 x 090', 'again R -2.13 -1.00 x 090'], []],
    [['R -2.00 -1.00 x 090', 'again R -2.14 -1.00 x 090'], ['warning R [-2.14 -1.00 x 090]']],
    [['R -2.00 -1.00 x 090', 'again R -2.00 -1.00 x 093'], []],
    [['R -2.00 -1.00 x 090', 'again R -2.00 -1.00 x 094'], ['warning R [-2.00 -1.00 x 094]']],
  ])('%s', (lines, expected) => {
    expect(told(readings(...lines), 'readings-apart')).toEqual(expected);
    expect(told(readings(...lines), 'not-judged')).toEqual([]);
  });

  test('names the values and the limit, and leaves the verdict open', () => {
    const text = readings('R -2.00 -1.00 x 090', 'again R -2.25 -1.00 x 090');
    expect(messages(text, 'readings-apart')).toEqual([
      'R power read -3.00 and -3.25: 0.25 D apart, limit 0.13 D (z80.1-2015). Not judged until they agree.',
    ]);
    expect(judged(text).verdict).toBe('incomplete');
  });
});

describe('one reading of three that does not fit', () => {
  const three = (a: string, b: string, c: string): string =>
    readings(`R ${a} -1.00 x 090`, `again R ${b} -1.00 x 090`, `again R ${c} -1.00 x 090`);
  test.each([
    ['-2.00', '-2.00', '-2.13', []],
    ['-2.00', '-2.00', '-2.14', ['warning R [-2.14 -1.00 x 090]']],
    ['-2.00', '-3.00', '-2.06', ['warning R [-3.00 -1.00 x 090]']],
    ['-3.00', '-2.00', '-2.06', ['warning R [-3.00 -1.00 x 090]']],
    // No two of them agree, so none of them is the odd one.
    ['-2.00', '-2.25', '-2.50', []],
  ])('%s, %s, %s', (a, b, c, expected) => {
    expect(told(three(a, b, c), 'repeat-outlier')).toEqual(expected);
  });

  test('is told instead of readings apart, once for power and cylinder', () => {
    const text = readings('R -2.00 -1.00 x 090', 'again R -2.00 -1.00 x 090', 'again R -2.00 -2.00 x 090');
    expect(told(text, 'repeat-outlier')).toEqual(['warning R [-2.00 -2.00 x 090]']);
    expect(told(text, 'readings-apart')).toEqual([]);
    expect(judged(text).verdict).toBe('incomplete');
    expect(messages(text, 'repeat-outlier')).toEqual([
      'R power read -4.00 here and -3.00, -3.00 otherwise, limit 0.13 D (z80.1-2015). One of them is a slip; not judged until they agree.',
    ]);
  });

  test('two readings have no odd one', () => {
    expect(told(readings('R -2.00 -1.00 x 090', 'again R -3.00 -1.00 x 090'), 'repeat-outlier')).toEqual([]);
  });
});

describe('nearer to the limit than the instrument is sure of', () => {
  const head = (...lines: readonly string[]): string[] => ['standard z80.1-2015', 'instrument FOC-A', ...lines];
  const off = (by: string, lines: string[] = ['  reads-to 0.01']): string =>
    pair(['R -2.00', 'L -1.00'], [`R ${by} with FOC-A`], head(...lines));

  // ISO 8598:1996 allows the indication 0.06 up to 5 D; 0.13 is the limit.
  test.each([
    ['-2.00', []],
    ['-2.07', []],
    ['-2.08', ['hint R [-2.08]']],
    ['-2.13', ['hint R [-2.13]']],
    ['-2.18', ['hint R [-2.18]']],
    ['-2.19', []],
  ])('%s', (by, expected) => {
    expect(told(off(by), 'within-uncertainty')).toEqual(expected);
  });

  test('with its numbers', () => {
    expect(messages(off('-2.10'), 'within-uncertainty')).toEqual([
      'R power off by -0.10 D, limit 0.13 D (z80.1-2015). The instrument alone may be off by 0.06 D, so this does not tell on which side the lens lies.',
    ]);
  });

  test('a stated uncertainty goes before that of its kind', () => {
    expect(told(off('-2.10', ['  uncertainty 0.02']), 'within-uncertainty')).toEqual([]);
    expect(told(off('-2.12', ['  uncertainty 0.02']), 'within-uncertainty')).toEqual(['hint R [-2.12]']);
  });

  test('an everyday pair raises nothing above a hint, and one eighth is told as near the limit only', () => {
    expect(alarms(written(JOB))).toEqual([]);
    expect(alarms(read('R -4.58 -0.75 x 022'))).toEqual([]);
    expect(told(read('R -4.50 -0.62 x 022'), 'within-uncertainty')).toEqual([]);
  });

  const outcomeOf = (text: string, guard: GuardBand): Outcome | undefined =>
    analyse(text, { guard })
      .blocks.flatMap(({ evaluation }) => evaluation?.measures ?? [])
      .find(({ quantity, eye }) => quantity === 'power' && eye === 'R')?.outcome;

  // 0.13 less and more 0.06: accepted to 0.07 when sure, rejected from above 0.19 when sure.
  test.each([
    [0, 'pass', 'pass', 'pass'],
    [0.07, 'pass', 'pass', 'pass'],
    [0.08, 'pass', 'fail', 'pass'],
    [0.13, 'pass', 'fail', 'pass'],
    [0.14, 'fail', 'fail', 'pass'],
    [0.19, 'fail', 'fail', 'pass'],
    [0.2, 'fail', 'fail', 'fail'],
  ] as const)('off by %s: simple %s, accept when sure %s, reject when sure %s', (by, simple, accept, reject) => {
    for (const sign of [1, -1]) {
      const text = off((-2 + sign * by).toFixed(2));
      expect(outcomeOf(text, 'simple')).toBe(simple);
      expect(outcomeOf(text, 'accept-when-sure')).toBe(accept);
      expect(outcomeOf(text, 'reject-when-sure')).toBe(reject);
    }
  });

  test('a guard band only ever moves one way', () => {
    for (let hundredths = -40; hundredths <= 40; hundredths++) {
      const text = off((-2 + hundredths / 100).toFixed(2));
      if (outcomeOf(text, 'simple') === 'fail') expect(outcomeOf(text, 'accept-when-sure')).toBe('fail');
      if (outcomeOf(text, 'simple') === 'pass') expect(outcomeOf(text, 'reject-when-sure')).toBe('pass');
    }
  });

  // An acceptance interval that is empty accepts nothing (JCGM 106, guarded acceptance; title from memory, text not seen).
  test.each([
    ['0.13', '-2.00', 'not-judged', 'pass'],
    ['0.50', '-2.00', 'not-judged', 'pass'],
    ['0.50', '-2.05', 'not-judged', 'pass'],
    ['0.50', '-2.14', 'fail', 'not-judged'],
    ['0.50', '-2.70', 'fail', 'fail'],
    ['0.12', '-2.00', 'pass', 'pass'],
  ] as const)(
    'uncertainty %s, read %s: guarded acceptance %s, guarded rejection %s',
    (u, read, acceptance, rejection) => {
      const text = off(read, [`  uncertainty ${u}`]);
      expect(outcomeOf(text, 'accept-when-sure')).toBe(acceptance);
      expect(outcomeOf(text, 'reject-when-sure')).toBe(rejection);
    },
  );

  test('an instrument that cannot decide within the limit is told, with what to do', () => {
    const { blocks } = analyse(off('-2.00', ['  uncertainty 0.50']), { guard: 'accept-when-sure' });
    const { evaluation, findings } = blocks.find(({ order }) => order !== null) ?? {};
    expect(evaluation?.verdict).toBe('incomplete');
    const told = (findings ?? []).filter(({ code, eye }) => code === 'not-judged' && eye === 'R');
    expect(told.map(({ level }) => level)).toContain('warning');
    expect(told.map(({ data, code }) => ruleOf(code)?.message(data))).toContain(
      'R power is not judged: the uncertainty of the instrument is as large as the tolerance; measure with one that is finer.',
    );
  });

  test('without a declared instrument nothing is guarded', () => {
    const text = pair(['R -2.00', 'L -1.00'], ['R -2.13']);
    for (const guard of ['simple', 'accept-when-sure', 'reject-when-sure'] as const)
      expect(outcomeOf(text, guard)).toBe('pass');
    expect(told(text, 'within-uncertainty')).toEqual([]);
  });
});
