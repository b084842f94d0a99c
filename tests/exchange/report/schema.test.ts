import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { BENCH, yearOfWork } from '../../support/year-of-work';
import { examplePaths, root, textOf } from '../support/examples';
import { reportOf, summaryOf } from './support';

const schema = JSON.parse(readFileSync(join(root, 'schema/report.schema.json'), 'utf8'));
const isReport = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: true }).compile(
  schema,
);

const problems = (value: unknown): unknown => (isReport(JSON.parse(JSON.stringify(value))) ? [] : isReport.errors);

const year = yearOfWork(4);
const examples = Object.fromEntries(examplePaths.map((path) => [path, textOf(path)]));

function withUnreadable() {
  const summary = summaryOf(examples);
  summary.unreadable('cut.lentil', 'it is not UTF-8 text');
  return summary.result({ date: '2027-03-01' });
}

/** Names left out, wild figures and dates, instruments without readings. */
const ODD = `instrument FOC-Z
  calibrated 2026-01-01 due 2026-02-30
  test-lens +400.00 read +1.00
standard z80.1-2015
order
  R -99 -99 x 999
  pd 1e9
  reading 9999-12-31 99:99 by "<b>" with "</script>"
    zero +9.99
    R -1.00
    again R +30.00
    prism R 19 BI L 19 BU
order TT-1
  R -1.00
  L -1.00
  reading 2026-11-24 with FOC-Z
    R -1.00
    L -1.12
    impact failed
`;

describe('the schema', () => {
  test.each([
    ['a year of work', reportOf(year.files, { bench: BENCH })],
    ['the examples and a file that could not be read', withUnreadable()],
    ['odd orders', reportOf({ 'odd.lentil': ODD }, { date: '2026-12-01' })],
    ['nothing', reportOf({})],
  ])('describes the report of %s', (_, report) => {
    expect(problems(report)).toEqual([]);
  });

  test.each([
    ['a share above one', '"rate":0', '"rate":7'],
    ['a unit of its own', '"unit":"D"', '"unit":"dpt"'],
    ['a state of its own', '"state":"unread"', '"state":"lost"'],
    ['a day that is none', /"from":"2026-\d\d-\d\d"/, '"from":"spring"'],
    ['no interval', '"low":', '"lower":'],
    ['no cautions', '"cautions":', '"caution":'],
    ['another version', '"lentil":1', '"lentil":2'],
  ])('refuses %s', (_, from, to) => {
    const text = JSON.stringify(reportOf(year.files, { bench: BENCH }));
    const spoilt = text.replace(from, to);
    expect(spoilt).not.toBe(text);
    expect(problems(JSON.parse(spoilt))).not.toEqual([]);
  });
});

test('figures are rounded to a ten-thousandth and never negative zero, infinite or none', () => {
  const figures: number[] = [];
  const visit = (value: unknown): void => {
    if (typeof value === 'number') figures.push(value);
    else if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) visit(part);
  };
  visit(reportOf(year.files, { bench: BENCH }));
  visit(reportOf({ 'odd.lentil': ODD }));
  expect(figures.length).toBeGreaterThan(1000);
  expect(figures.filter((one) => !/^-?\d+(?:\.\d{1,4})?$/.test(String(one)) || Object.is(one, -0))).toEqual([]);
});
