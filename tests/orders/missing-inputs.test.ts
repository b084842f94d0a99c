/** Nothing is judged by what happens to be at hand while something is missing that the verdict rests on. */
import { describe, expect, test } from 'vitest';
import { analyse, type MissingInput, readSettings } from '../../orders';
import { findingsOf } from '../support/findings';
import { pair } from '../support/judged';

const LATE: readonly MissingInput[] = [{ what: 'bench.lentil', why: null }];
const read = (figure: string): string =>
  pair(
    ['R -2.00', 'make R', 'design single-vision', 'supply uncut'],
    [`R ${figure} with FOC-A`, 'prism R 0'],
    ['standard house'],
  );

test.each(['-2.00', '-3.00'])('a reading of %s is neither accepted nor rejected, and the reason is told', (figure) => {
  const { blocks } = analyse(read(figure), { missing: LATE });
  const { evaluation } = blocks.find(({ order }) => order !== null) ?? {};
  expect(evaluation).toMatchObject({ verdict: 'incomplete', measures: [], unresolved: ['input-missing'] });
});

test('what may be declared in the missing file is not called unknown', () => {
  const codes = findingsOf(read('-2.00'), { missing: LATE }).map(({ finding }) => finding.code);
  expect(codes).toEqual(['input-missing']);
});

test('the same text is judged when the file has come', () => {
  const shared = 'tolerance house from z80.1-2015\ninstrument FOC-A\n';
  const { document } = analyse(shared);
  const { blocks } = analyse(read('-2.00'), { shared: [document] });
  expect(blocks.find(({ order }) => order !== null)?.evaluation?.verdict).toBe('accept');
});

test('an order without a reading is told nothing', () => {
  expect(findingsOf('order A\n  R -2.00\n  L -2.00\n', { missing: LATE }).map(({ finding }) => finding.code)).toEqual(
    findingsOf('order A\n  R -2.00\n  L -2.00\n').map(({ finding }) => finding.code),
  );
});

describe('the text of a settings file', () => {
  test.each([
    ['{}', {}],
    [
      '{ "standard": "z80.1-2015", "guard": "accept-when-sure", "near": 90, "strict": true }',
      { standard: 'z80.1-2015', guard: 'accept-when-sure', nearPercent: 90, strict: true },
    ],
    ['\uFEFF{ "$schema": "x.json", "near": 5 }', { nearPercent: 5 }],
  ])('%s', (text, settings) => {
    expect(readSettings(text)).toEqual({ settings });
  });

  test.each([
    ['{ "near": 90, "guard": "none" }', '"guard"'],
    ['{ "standrd": "guard", "guard": "simple" }', '"standrd"'],
    ['{ "standard": "near", "near": 0 }', '"near"'],
    ['[]', '[]'],
  ])('the fault in %s is at %s', (text, where) => {
    const told = readSettings(text);
    if (!('fault' in told)) throw new Error('nothing is told');
    const { start, end } = told.fault;
    expect(text.slice(start, end)).toBe(where);
    expect(text.slice(end)).toMatch(/^\s*:|^$/);
  });

  test.each(['', '{', '{ "near": }', 'null', '7', '\uFEFF{ "near": x }'])('%j has a place inside the text', (text) => {
    const told = readSettings(text);
    if (!('fault' in told)) throw new Error('nothing is told');
    expect(told.fault.start).toBeLessThanOrEqual(told.fault.end);
    expect(told.fault.end).toBeLessThanOrEqual(text.length);
    expect(told.fault.message).not.toBe('');
  });
});
