import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { jsonLinesWriter, jsonWriter, toJson } from '../../exchange';
import { analyse } from '../../orders';
import { analysisOf, examplePaths, root } from './support/examples';
import { written } from './support/written';

const schema = JSON.parse(readFileSync(join(root, 'schema/check.schema.json'), 'utf8'));
// Further fields are allowed by the promise of the format, so only the schema itself is read strictly.
const ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: true });
const isDocument = ajv.compile(schema);
const isLine = ajv.compile({ $ref: `${schema.$id}#/$defs/line` });

const problems = (valid: ValidateFunction, value: unknown): unknown => (valid(value) ? [] : valid.errors);

const examples = examplePaths.map((path) => [path, analysisOf(path)] as const);

/** What the examples do not hold: names and powers left out, an unknown standard, wild figures. */
const odd = [
  '',
  'order\n',
  'order TT-1\n  R\n  reading\n    R\n',
  'order TT-1\n  R -99 -99 x 999\n  pd 1e9\n  frame A 0 B 0 DBL 0 ED 0\n',
  'standard none-such\norder TT-1\n  R -1.00\n  L -1.00\n  reading 2026-11-24\n    R -1.00\n    impact failed\n',
  'standard z80.1-2015\norder TT-1\n  R pl\n  L pl\n  balance L\n  reading 2026-02-31 99:99\n    cosmetic failed\n    decided remake R\n',
  'ordr TT-1\n  R -1.00\n',
  'tolerance house from z80.1-2015\n  power 0.05\ninstrument BF-1\n  reads-to 0.25\n  uncertainty 0.06\nstandard house\norder TT-1\n  R -1.00\n  L -1.00\n  reading with BF-1\n    R -1.12\n    again R -1.00\n    L -1.00\n',
];

test('examples and odd texts together hold what is said only now and then', () => {
  const all = [...examples.map(([, analysis]) => analysis), ...odd.map((text) => analyse(text))];
  const text = JSON.stringify(all.map((one) => toJson(one, 'all.lentil')));
  for (const key of ['because', 'beside', 'house', 'related', 'spread', 'tooCoarse', 'uncertainty'])
    expect(text.includes(`"${key}":`), key).toBe(true);
});

test('a thickness that may not be undercut is a lower end, and no limit to either side', () => {
  const text =
    'standard z80.1-2015\norder TT-1\n  R -1.00\n  L -1.00\n  thickness min 2.0\n  reading 2026-11-24\n    thickness R min 1.9 L min 2.4\n';
  const { orders } = toJson(analyse(text), 'a.lentil');
  const thickness = orders[0]?.measures.filter(({ quantity }) => quantity === 'min-thickness');
  expect(thickness).toMatchObject([
    { eye: 'R', read: 1.9, low: 2, limit: null, outcome: 'fail' },
    { eye: 'L', read: 2.4, low: 2, limit: null, outcome: 'pass' },
  ]);
});

describe('the schema', () => {
  test.each(examples)('describes what %s gives', (path, analysis) => {
    const file = toJson(analysis, path);
    const totals = { files: 1, orders: 0, accept: 0, reject: 0, incomplete: 0, unread: 0, errors: 0, warnings: 0 };
    expect(problems(isDocument, JSON.parse(JSON.stringify({ lentil: 1, files: [file], totals })))).toEqual([]);
  });

  test.each(odd)('describes what comes of %j', (text) => {
    const file = JSON.parse(written(jsonWriter(), [['odd.lentil', analyse(text)]]));
    expect(problems(isDocument, file)).toEqual([]);
  });

  test('describes the document and the lines as they are written', () => {
    expect(problems(isDocument, JSON.parse(written(jsonWriter(), examples)))).toEqual([]);
    const lines = written(jsonLinesWriter(), examples).trimEnd().split('\n');
    expect(lines.length).toBeGreaterThan(14);
    expect(lines.flatMap((line) => problems(isLine, JSON.parse(line)))).toEqual([]);
  });

  test.each([
    ['a level of its own', '"level":"error"', '"level":"fatal"'],
    ['a verdict of its own', '"verdict":"reject"', '"verdict":"return"'],
    ['an outcome of its own', '"outcome":"pass"', '"outcome":"ok"'],
    ['evidence of its own', '"evidence":"secondary"', '"evidence":"sure"'],
    ['a figure in quotes', /"deviation":-?[\d.]+/, '"deviation":"0.13"'],
    ['an axis of 0', /"axis":\d+/, '"axis":0'],
    ['a line before the first', /"line":\d+/, '"line":-1'],
    ['another version', '"lentil": 1', '"lentil": 2'],
    ['no findings', /"findings": \[/, '"finding": ['],
  ])('refuses %s', (_, from, to) => {
    const text = written(jsonWriter(), examples);
    const spoilt = text.replace(from, to);
    expect(spoilt).not.toBe(text);
    expect(problems(isDocument, JSON.parse(spoilt))).not.toEqual([]);
  });
});

test('every figure is rounded to a ten-thousandth and never negative zero', () => {
  const figures: number[] = [];
  const visit = (value: unknown): void => {
    if (typeof value === 'number') figures.push(value);
    else if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) visit(part);
  };
  for (const [path, analysis] of examples) visit(toJson(analysis, path));
  for (const text of odd) visit(toJson(analyse(text), 'odd.lentil'));
  expect(figures.length).toBeGreaterThan(1000);
  // The shortest decimal form of a rounded figure has at most four decimals.
  const unrounded = figures.filter((one) => !/^-?\d+(?:\.\d{1,4})?(?:e\+\d+)?$/.test(String(one)));
  expect(unrounded).toEqual([]);
  expect(figures.filter((one) => Object.is(one, -0))).toEqual([]);
});

test('the document and the whole object say the same', () => {
  const { files } = JSON.parse(written(jsonWriter(), examples));
  const whole = examples.map(([path, analysis]) => toJson(analysis, path));
  expect(files.slice(0, -1)).toEqual(JSON.parse(JSON.stringify(whole)));
  expect(files.at(-1)).toEqual({ path: 'gone.lentil', error: 'no permission to read it', orders: [], findings: [] });
});
