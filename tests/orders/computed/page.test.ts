import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { WORKED_CODES } from '../../../orders';

const read = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

test('the page and the schema name every figure, and none that there is not', () => {
  const codes = [...WORKED_CODES].sort();
  const rows = read('orders/computed/README.md').matchAll(/^\| (`[^|]+`) +\|/gm);
  const parts = new Set(['what', 'eye', 'values', 'refused', 'formula', 'inputs', 'source', 'assumed']);
  const named = [...rows].flatMap(([, cell]) => [...(cell ?? '').matchAll(/`([^`]+)`/g)].map(([, code]) => code ?? ''));
  expect(named.filter((code) => !parts.has(code)).sort()).toEqual(codes);
  const schema = JSON.parse(read('schema/check.schema.json'));
  expect([...schema.$defs.worked.properties.what.examples].sort()).toEqual(codes);
});
