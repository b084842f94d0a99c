import { statSync } from 'node:fs';
import { expect, test } from 'vitest';
import { vsix } from '../../scripts/workbench/places.mjs';

test('the packed extension is small', () => {
  const { size } = statSync(vsix);
  console.info(`The packed extension has ${(size / 1024).toFixed(0)} kB.`);
  expect(size).toBeLessThan(1_000_000);
});
