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
    for (const { source, evidence, note } of cellsOf(set)) {
      const number = stdout.match(new RegExp(`^\\[(\\d+)\\] ${source}$`, 'm'))?.[1];
      expect(text).toContain(`${evidence} [${number}]`);
      if (note) expect(text).toContain(flat(note));
    }
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(115);
  });

  // Quick Reference Guide, ANSI Z80.1-2015: the lines of its tables.
  test.each([
    /0\.00 to 6\.50 D +± 0\.13 D +secondary +\[\d+\]/,
    /above 6\.50 D +± 2 % of the meridian +secondary/,
    /0\.00 to 6\.50 D +above 2\.00 to 4\.50 D +± 0\.15 D +secondary/,
    /above 6\.50 D +above 4\.50 D +± 4 % of the cylinder +secondary/,
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

/** Everything in a set that cites a source. */
function cellsOf(set: ToleranceSet): Cell[] {
  const cells: Cell[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('source' in value && 'evidence' in value) cells.push(value as Cell);
    for (const part of Object.values(value)) visit(part);
  };
  visit(set);
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
