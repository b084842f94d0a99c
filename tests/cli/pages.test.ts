import { describe, expect, test } from 'vitest';
import { RULES, type ToleranceSet, toleranceSets } from '../../orders';
import manifest from '../../package.json';
import { lentil } from './support/command';

/** Text as it reads without its line breaks. */
const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe('explain', () => {
  test('lists every code with what it checks', () => {
    const { stdout } = lentil(['explain']);
    for (const { code } of RULES) expect(stdout).toMatch(new RegExp(`^ {2}${code} `, 'm'));
    for (const { page } of RULES) expect(flat(stdout)).toContain(flat(page.checks));
  });

  test.each(['point-missing', 'axis-outside', 'near-the-limit'])('shows the whole page of %s', (code) => {
    const { stdout } = lentil(['explain', code.toUpperCase()]);
    const page = RULES.find((rule) => rule.code === code)?.page;
    expect(stdout.startsWith(`${code}  (`)).toBe(true);
    for (const part of [page?.checks, page?.why, page?.example.wrong, page?.example.right, page?.fix, page?.source])
      if (part) expect(flat(stdout)).toContain(flat(part));
  });

  test('keeps within the width of a page', () => {
    for (const line of lentil(['explain', 'axis-short']).stdout.split('\n'))
      expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe('standards', () => {
  test('lists every set', () => {
    const { stdout } = lentil(['standards']);
    for (const { id, title } of toleranceSets) expect(stdout).toContain(`${id.padEnd(14)}  ${title}`);
  });

  test.each(toleranceSets.map((set) => [set.id, set] as const))('shows the tables of %s', (id, set) => {
    const { stdout } = lentil(['standards', id]);
    const text = flat(stdout);
    for (const caution of set.cautions) expect(text).toContain(flat(caution));
    for (const cell of cellsOf(set)) {
      expect(text).toContain(`${cell.evidence} ${cell.source}`);
      if (cell.note) expect(text).toContain(flat(cell.note));
    }
  });

  // Quick Reference Guide, ANSI Z80.1-2015: the lines of its tables.
  test.each([
    /0\.00 to 6\.50 D +± 0\.13 D +± 0\.13 D +± 0\.15 D +± 4 % of the cylinder +secondary/,
    /above 6\.50 D +± 2 % of the meridian +± 0\.13 D +± 0\.15 D/,
    /above 0\.25 to 0\.50 D +± 7° +secondary/,
    /0\.00 to 4\.00 D +± 0\.12 D +secondary/,
    /above 3\.375 D +any +1 mm +height difference/,
    /above 2\.75 D +any +2\.5 mm +distance pd, pair total/,
  ])('prints the line %s', (line) => {
    expect(lentil(['standards', 'z80.1-2015']).stdout).toMatch(line);
  });
});

interface Cell {
  readonly source: string;
  readonly evidence: string;
  readonly note?: string;
}

/** The cells of a set that stand at the end of a row of their own; those of a power row stand inside it. */
function cellsOf(set: ToleranceSet): Cell[] {
  const cells: Cell[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('source' in value && 'evidence' in value) cells.push(value as Cell);
    for (const part of Object.values(value)) visit(part);
  };
  for (const row of set.power.flatMap(({ rows }) => rows)) cells.push(row.meridian);
  visit({ ...set, power: [] });
  return cells;
}

test('the version is that of the package', () => {
  expect(lentil(['--version']).stdout).toBe(`${manifest.version}\n`);
});

test('the help names every command, and says what the thing is not', () => {
  const { stdout } = lentil(['--help']);
  for (const name of ['check', 'explain', 'standards', 'serve'])
    expect(stdout).toMatch(new RegExp(`^ {2}${name} `, 'm'));
  expect(stdout).toContain('not a medical device');
});
