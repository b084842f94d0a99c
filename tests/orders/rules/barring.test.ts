/**
 * What is not understood, contradicts itself or cannot be keeps an acceptance away, whatever the figures say. Each case is
 * the plain job, read right in everything, with one thing changed; the source of each is that of its rule.
 */
import { describe, expect, test } from 'vitest';
import { analyse, RULES } from '../../../orders';
import { JOB, type Job, put, without, written } from '../../support/job';
import { judged } from '../../support/judged';

const inOrder = (...lines: readonly string[]): Job => ({ ...JOB, order: lines.reduce(put, JOB.order) });
const inReading = (...lines: readonly string[]): Job => ({ ...JOB, reading: lines.reduce(put, JOB.reading) });
const more = (line: string): Job => ({ ...JOB, reading: [...JOB.reading, line] });

test('the job itself is a plain accept', () => {
  expect(judged(written(JOB))).toMatchObject({ verdict: 'accept', reservations: [], unresolved: [] });
});

const CASES: readonly (readonly [what: string, code: string, job: Job])[] = [
  ['the prescription is another lens', 'rx-differs', inOrder('rx R -4.50 -0.75 x 122 L -4.25 -1.00 x 168 add +2.00')],
  ['the blank cannot cover', 'blank-short', inOrder('blank 58')],
  [
    'the compensation is unsaid',
    'compensation-unsaid',
    { ...inOrder('tested vertex 8', 'as-worn vertex 16'), reading: JOB.reading },
  ],
  ['the halves of the PD contradict its whole', 'pd-halves-disagree', inOrder('pd 63 R 31 L 31 near 60')],
  [
    'the near PD is wider than that for far',
    'near-pd-wider',
    { ...inOrder('pd 63 near 66'), reading: put(JOB.reading, 'pd 63 near 66') },
  ],
  ['the order says a thing twice', 'said-twice', { ...JOB, order: [...JOB.order, 'pd 64'] }],
  ['the reading says a thing twice', 'said-twice', more('R -4.62 -0.75 x 022')],
  [
    'a test fails and passes in one reading',
    'said-twice',
    { ...JOB, reading: [...JOB.reading, 'marking failed', 'marking passed'] },
  ],
  ['a word begins no line', 'unknown-line', more('impct failed')],
  ['text is left over', 'unexpected-text', inReading('pd 63 near 60 about')],
  ['the supply is an unknown choice', 'unknown-choice', inOrder('supply glaced')],
];

test.each(CASES)('%s', (_, code, job) => {
  const { verdict, reservations, unresolved } = judged(written(job));
  expect({ verdict, reservations, has: unresolved.includes(code) }, written(job)).toEqual({
    verdict: 'incomplete',
    reservations: [],
    has: true,
  });
});

test('a line at the margin of the order, below its reading, was ordered or measured', () => {
  const text = `${written({ ...JOB, reading: without(JOB.reading, 'height') })}\n  height 17`;
  expect(judged(text)).toMatchObject({ verdict: 'incomplete', unresolved: ['block-unclear'] });
});

test('an add without a design', () => {
  const text = written({ ...JOB, order: without(JOB.order, 'design') });
  expect(judged(text).verdict).not.toBe('accept');
  expect(judged(text).unresolved).toContain('design-missing');
});

describe('what an order rests on', () => {
  const under = (...head: readonly string[]): string => written({ ...JOB, head });
  test.each([
    ['a zero of the instrument', under('standard z80.1-2015', 'instrument FOC-A', '  zero +0.O3')],
    ['a line of the defaults', under('standard z80.1-2015', 'defaults', '  suply glazed', 'instrument FOC-A')],
    [
      'a limit of the house',
      under('standard house', 'tolerance house from z80.1-2015', '  power O.10', 'instrument FOC-A'),
    ],
  ])('%s that was not understood', (_, text) => {
    const found = judged(text);
    expect(found, text).toMatchObject({ verdict: 'incomplete' });
    expect(found.unresolved, text).toContain('rests-on-unclear');
  });
  test('an instrument that nobody used may be written in any way', () => {
    const text = under('standard z80.1-2015', 'instrument FOC-A', 'instrument FOC-B', '  zero +0.O3');
    expect(judged(text)).toMatchObject({ verdict: 'accept', unresolved: [] });
  });
  test('an edit of the instrument is seen by the orders that used it', () => {
    const bad = analyse(under('standard z80.1-2015', 'instrument FOC-A', '  zero +0.O3'));
    const good = analyse(under('standard z80.1-2015', 'instrument FOC-A', '  zero +0.03'));
    const verdicts = [bad, good].map(({ blocks }) => blocks.flatMap(({ evaluation }) => evaluation?.verdict ?? []));
    expect(verdicts).toEqual([['incomplete'], ['accept']]);
  });
});

test('an exception gives its reason', () => {
  for (const { code, bars } of RULES)
    if (bars !== undefined && bars !== true) expect(bars.not, code).toMatch(/^\p{Lu}.{20,}\.$/u);
});
