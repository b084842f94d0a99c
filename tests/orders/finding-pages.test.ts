/**
 * The pages of the findings are made from the rules. A stale page fails here; `UPDATE_PAGES=1` in the environment writes
 * them anew.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { findingsReference } from '../../cli/findings-reference';
import { RULES } from '../../orders';

const FOLDER = new URL('../../docs/findings/', import.meta.url);
const PAGES = findingsReference();

if (process.env.UPDATE_PAGES) {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of PAGES) writeFileSync(new URL(name, FOLDER), text);
}

test('there is a page for every family and an index, and no other', () => {
  expect(readdirSync(FOLDER).sort()).toEqual([...PAGES.keys()].sort());
});

test.each([...PAGES])('%s is that of the rules', (name, text) => {
  expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(text);
});

describe.each(RULES.map((rule) => [rule.code, rule] as const))('%s', (code, { family, page, level }) => {
  test('has its section, and the index leads to it', () => {
    const section = PAGES.get(`${family}.md`)?.split(`\n## ${code}\n`)[1]?.split('\n## ')[0] ?? '';
    for (const part of [page.example.wrong, page.example.right]) expect(section).toContain(part);
    for (const part of [page.checks, page.why, page.levels ?? '', page.fix ?? '', page.source])
      expect(section.replaceAll('\\', '')).toContain(part);
    expect(PAGES.get('README.md')).toContain(`(${family}.md#${code})`);
  });

  test('says at which level where, if that depends', () => {
    // Rules of the bench and of causes say it in what they look at.
    if (typeof level === 'function' && (family === 'writing' || family === 'order'))
      expect(page.levels).toMatch(/\b(?:error|warning|info|hint)\b.*\b(?:error|warning|info|hint)\b/);
  });
});
