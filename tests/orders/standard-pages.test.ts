/**
 * The pages of the tolerance sets are made from the tables. A stale page fails here; `UPDATE_PAGES=1` in the environment
 * writes them anew.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { standardInWords, standardSources, toleranceSets } from '../../orders';
import { PRINTED } from './support/printed';

const FOLDER = new URL('../../docs/standards/', import.meta.url);

if (process.env.UPDATE_PAGES) {
  mkdirSync(FOLDER, { recursive: true });
  for (const set of toleranceSets) writeFileSync(new URL(`${set.id}.md`, FOLDER), standardInWords(set));
}

test('there is a page for every set, and no other', () => {
  expect(readdirSync(FOLDER).sort()).toEqual(toleranceSets.map(({ id }) => `${id}.md`).sort());
});

describe.each(toleranceSets.map((set) => [set.id, set] as const))('%s', (id, set) => {
  test('its page is that of the tables', () => {
    expect(readFileSync(new URL(`${id}.md`, FOLDER), 'utf8')).toBe(standardInWords(set));
  });

  test('its page shows every printed limit', () => {
    const page = standardInWords(set);
    const printed = PRINTED.find((one) => one.set === id);
    expect(printed).toBeDefined();
    for (const { rows } of printed?.power ?? [])
      for (const [, ...limits] of rows)
        for (const limit of limits)
          expect(page).toContain(typeof limit === 'number' ? `± ${limit.toFixed(2)} D` : (limit ?? 'none set'));
    for (const { rows } of printed?.axis ?? [])
      for (const [, limit] of rows) expect(page).toContain(limit === null ? 'none set' : `± ${limit}°`);
  });

  test('every source is numbered, cited, and named', () => {
    const page = standardInWords(set);
    const cited = [...page.matchAll(/\| \[(\d+)\] \|/g)].map(([, number]) => Number(number));
    expect(cited.length).toBeGreaterThan(10);
    expect(Math.min(...cited)).toBeGreaterThan(0);
    expect(Math.max(...cited)).toBeLessThanOrEqual(standardSources(set).length);
    for (const caution of set.cautions) expect(page).toContain(caution);
  });
});
