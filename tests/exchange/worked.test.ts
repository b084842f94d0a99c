import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { toJson } from '../../exchange';
import { analyse, type Worked, workedLens, workedPair } from '../../orders';
import { analysisOf, examplePaths, root } from './support/examples';

const schema = JSON.parse(readFileSync(join(root, 'schema/check.schema.json'), 'utf8'));
const ajv = new Ajv2020({ strict: false, allErrors: true });
ajv.addSchema(schema);
const isWorked = ajv.compile({ $ref: `${schema.$id}#/$defs/worked` });

const ordersOf = (text: string) => toJson(analyse(text), 'one.lentil').orders;

/** All worked-out figures of the examples, lens by lens and pair by pair. */
const figures = examplePaths
  .flatMap((path) => toJson(analysisOf(path), path).orders)
  .flatMap(({ lenses, worked }) => [...(lenses.R?.worked ?? []), ...(lenses.L?.worked ?? []), ...worked]);

test('every figure of the examples is as the schema says', () => {
  expect(figures.length).toBeGreaterThan(500);
  const wrong = figures.flatMap((one) =>
    isWorked(JSON.parse(JSON.stringify(one))) ? [] : [one.what, isWorked.errors],
  );
  expect(wrong).toEqual([]);
});

test('the schema names every figure that may come, and no other', () => {
  const named: readonly string[] = schema.$defs.worked.properties.what.examples;
  expect(figures.map(({ what }) => what).filter((what) => !named.includes(what))).toEqual([]);
  expect(new Set(named).size).toBe(named.length);
});

describe('the schema refuses', () => {
  const [one] = figures;
  test.each([
    ['a figure without its formula', { ...one, formula: undefined }],
    ['a figure without its source', { ...one, source: '' }],
    ['a value without a unit', { ...one, values: { in: { value: 3 } } }],
    ['a unit of its own', { ...one, values: { in: { value: 3, unit: 'inch' } } }],
    ['a value in quotes', { ...one, values: { in: { value: '3', unit: 'mm' } } }],
    ['an input from nowhere', { ...one, inputs: { A: { value: 52, unit: 'mm' } } }],
    ['an input from somewhere else', { ...one, inputs: { A: { value: 52, unit: 'mm', from: 'guessed' } } }],
    ['a reason of its own', { ...one, refused: 'busy' }],
  ])('%s', (_, spoilt) => {
    expect(isWorked(JSON.parse(JSON.stringify(spoilt)))).toBe(false);
  });
});

/** A figure of the library as the output has it: the axis of a sphere stays out, and so does a refusal where there is none. */
const asWritten = ({ refused, ...figure }: Worked): unknown =>
  JSON.parse(JSON.stringify({ ...figure, ...(refused ? { refused } : {}) }), (_, value) =>
    value?.cylinder === 0 ? { ...value, axis: null } : value,
  );

test.each(examplePaths)('the output carries the figures of the library, in %s', (path) => {
  const { blocks } = analysisOf(path);
  const orders = blocks.flatMap(({ order }) => order ?? []);
  const json = toJson(analysisOf(path), path).orders;
  for (const [at, order] of orders.entries()) {
    expect(json[at]?.lenses.R?.worked ?? []).toEqual(workedLens(order, 'R').map(asWritten));
    expect(json[at]?.lenses.L?.worked ?? []).toEqual(workedLens(order, 'L').map(asWritten));
    expect(json[at]?.worked).toEqual(workedPair(order).map(asWritten));
  }
});

test('the sample figures are those of the fixed fields, each with the way it is made', () => {
  const [order] = toJson(analysisOf('examples/quay-lane.lentil'), 'quay-lane.lentil').orders;
  const lens = order?.lenses.R;
  const of = (what: string) => lens?.worked.find((one) => one.what === what);
  expect(of('decentration')).toEqual({
    what: 'decentration',
    eye: 'R',
    // (52 + 18 - 63) / 2
    values: { in: { value: 3.5, unit: 'mm' } },
    formula: '(A + DBL − PD) / 2',
    inputs: {
      A: { value: 52, unit: 'mm', from: 'ordered' },
      DBL: { value: 18, unit: 'mm', from: 'ordered' },
      PD: { value: 63, unit: 'mm', from: 'ordered' },
    },
    source: 'OpticalCourse free dispensing course, quiz answers.',
    assumed: [],
  });
  expect(of('blank')?.values.diameter?.value).toBe(lens?.blank);
  expect(of('near-power')?.values.power?.value).toEqual(lens?.near);
  expect(of('power-to-make')?.values.power?.value).toEqual(lens?.made);
  expect(of('segment-drop')?.values.below?.value).toBe(lens?.segment?.drop);
  expect(of('segment-inset')?.values.in?.value).toBe(lens?.segment?.inset);
  expect(of('spherical-equivalent')?.values.sphere?.value).toBe(lens?.sphericalEquivalent);
});

test('the axis of a sphere stays out, and a refusal says why', () => {
  const [order] = ordersOf('order A\n  R 0.00\n  L -2.00\n  prism R 1 BI\n');
  const [R, L] = [order?.lenses.R?.worked ?? [], order?.lenses.L?.worked ?? []];
  expect(L.find(({ what }) => what === 'power-to-make')?.values.power?.value).toEqual({
    sphere: -2,
    cylinder: 0,
    axis: null,
  });
  expect(R.find(({ what }) => what === 'decentration-for-prism')).toMatchObject({
    refused: 'plano-meridian',
    values: {},
  });
  expect(L.every((one) => !('refused' in one))).toBe(true);
});

test('a lens without a power still has what its material says', () => {
  const [order] = ordersOf('order A\n  R\n  lens resin-1.50\n');
  expect(order?.lenses.R?.ordered).toBeNull();
  expect(order?.lenses.R?.worked.map(({ what }) => what)).toEqual(['reflectance']);
});
