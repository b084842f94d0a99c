/** Reading names from a text: any text at all, in one go or in slices, and from a real disk. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { expect, onTestFinished, test } from 'vitest';
import { parseDocument } from '../../grammar';
import { namesOf, namesOnce, writtenName } from '../../server/names/names';
import { TableMaker, tableOf } from '../../server/names/table';
import { platform } from '../../server/node';
import { anyText, holds, seed } from '../grammar/support/random-text';

const shown = (text: string): string[] =>
  parseDocument(text)
    .blocks.flatMap(namesOf)
    .map(({ kind, name, isDefinition }) => `${isDefinition ? 'is' : 'uses'} ${kind} ${name}`);

test.each([
  ['order QL-1', ['is order QL-1']],
  ['order "QL 1"', ['is order QL 1']],
  ['ORDER QL-1', ['is order QL-1']],
  ['order', []],
  ['order # later', []],
  ['instrument FOC-A', ['is instrument FOC-A']],
  ['tolerance house from z80.1-2015', ['is tolerance house', 'uses tolerance z80.1-2015']],
  ['standard house', ['uses tolerance house']],
  ['order A\n  remake-of QL-1 "axis"', ['is order A', 'uses order QL-1']],
  ['order A\n  reading 2026-11-24 with FOC-A', ['is order A', 'uses instrument FOC-A']],
  ['order A\n  reading\n    R -1.00 with FOC-A', ['is order A', 'uses instrument FOC-A']],
  ['order A\n  note with FOC-A', ['is order A']],
  ['order A\n  note "order B"', ['is order A']],
])('the names in %j', (text, expected) => {
  expect(shown(text)).toEqual(expected);
});

test(`no line is passed over that holds a name (seed ${seed})`, () => {
  holds(300, anyText, (text) => {
    for (const block of parseDocument(text).blocks) {
      const found = namesOf(block).map(({ line }) => line);
      for (const [at, line] of block.lines.entries()) {
        const { node } = line.parsed(block.kind);
        const names = ['order', 'instrument', 'tolerance', 'standard', 'remake-of'].includes(node.kind)
          ? 'name' in node && node.name
          : node.kind === 'reading' && node.with;
        if ((names && names.text.trim() !== '') || node.qualifiers?.with?.text.trim()) expect(found).toContain(at);
      }
    }
  });
});

test('a text read once and let go gives the same names, at the places where they stand', () => {
  holds(300, anyText, (text) => {
    const document = parseDocument(text);
    for (const block of document.blocks) expect(namesOnce(block)).toEqual(namesOf(block));
    for (const { definitions, uses, name } of tableOf(document).values()) {
      for (const { line, start, end } of [...definitions, ...uses]) {
        const covered = document.line(line)?.text.slice(start, end) ?? '';
        expect(covered.length).toBe(end - start);
        if (!/["“”„«»]/.test(covered)) expect(covered).toBe(name);
      }
    }
  });
});

test('a large text can be read in slices', () => {
  const document = parseDocument(Array.from({ length: 400 }, (_, index) => `order A${index}\n`).join(''));
  const maker = new TableMaker(document, namesOnce);
  let slices = 1;
  while (!maker.readFor(0.01)) slices++;
  expect(slices).toBeGreaterThan(1);
  expect([...maker.whole().keys()]).toEqual([...tableOf(document).keys()]);
});

test('whatever a name is written as is read as that name again', () => {
  holds(1_000, fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }), (name) => {
    const written = writtenName('order', name);
    if (written === null) return;
    expect(shown(`order ${written}\n  remake-of ${written} "axis"`)).toEqual([
      `is order ${name}`,
      `uses order ${name}`,
    ]);
  });
});

test('all files of a folder on disk are found but those that hold no work of the bench', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-names-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const path of ['a.lentil', 'days/Müller & co.LENTIL', 'node_modules/x/b.lentil', '.git/c.lentil', 'notes.txt']) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), 'order A\n');
  }
  symlinkSync(folder, join(folder, 'days', 'round'));
  writeFileSync(join(folder, 'huge.lentil'), '');
  truncateSync(join(folder, 'huge.lentil'), 9_000_000);
  const found: string[] = [];
  for await (const uri of platform.list(pathToFileURL(folder).href)) found.push(uri);
  expect(found.sort()).toEqual(
    ['a.lentil', 'days/Müller & co.LENTIL'].map((path) => pathToFileURL(join(folder, path)).href).sort(),
  );
});

test.each(['file:///no/such/folder', 'file://host/share', 'untitled:Untitled-1', 'nonsense'])(
  'a folder that cannot be read has no files: %s',
  async (folder) => {
    for await (const uri of platform.list(folder)) expect(uri).toBeUndefined();
    expect(await platform.read(`${folder}/a.lentil`)).toBeNull();
  },
);
