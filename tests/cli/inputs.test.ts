import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { CheckJson } from '../../exchange';
import { lentil } from './support/command';
import { BAD, folderWith, GOOD, pair } from './support/folder';

const checked = (args: readonly string[], cwd: string, input?: string | Buffer): CheckJson =>
  JSON.parse(lentil(['check', '--format', 'json', ...args], { cwd, ...(input === undefined ? {} : { input }) }).stdout);

const paths = ({ files }: CheckJson): readonly string[] => files.map(({ path }) => path);

describe('folders', () => {
  const files = {
    'week/b.lentil': GOOD,
    'week/a.lentil': GOOD,
    'week/day/c.LENTIL': GOOD,
    'week/notes.txt': BAD,
    'week/.old/d.lentil': BAD,
    'week/node_modules/e.lentil': BAD,
  };

  test('are searched to any depth, in order, without hidden folders', () => {
    const found = ['week/a.lentil', 'week/b.lentil', 'week/day/c.LENTIL'];
    expect(paths(checked(['week'], folderWith(files)))).toEqual(found);
    expect(paths(checked(['week/'], folderWith(files)))).toEqual(found);
    expect(paths(checked(['.'], folderWith(files)))).toEqual(found);
  });

  test('give a file once, however often it comes up', () => {
    expect(paths(checked(['week/b.lentil', 'week', './week/a.lentil'], folderWith(files)))).toEqual([
      'week/b.lentil',
      'week/a.lentil',
      'week/day/c.LENTIL',
    ]);
  });

  test('without any file are told and are no failure', () => {
    const { status, stderr } = lentil(['check', '.'], { cwd: folderWith({ 'notes.txt': BAD }) });
    expect(stderr).toBe('lentil: .: no .lentil file in this folder\n');
    expect(status).toBe(0);
  });

  test('that are links are not followed, links to files are, and a dead link is told', () => {
    const cwd = folderWith({ 'week/a.lentil': GOOD, 'other.lentil': GOOD });
    symlinkSync(join(cwd, 'week'), join(cwd, 'week', 'round'));
    symlinkSync(join(cwd, 'other.lentil'), join(cwd, 'week', 'b.lentil'));
    symlinkSync(join(cwd, 'gone.lentil'), join(cwd, 'week', 'c.lentil'));
    const { status, stdout, stderr } = lentil(['check', '--format', 'json', 'week'], { cwd });
    const { files: told } = JSON.parse(stdout) as CheckJson;
    expect(told.map(({ path, error }) => [path, error])).toEqual([
      ['week/a.lentil', undefined],
      ['week/b.lentil', undefined],
      ['week/c.lentil', 'no such file or folder'],
    ]);
    expect(stderr).toBe('lentil: week/c.lentil: no such file or folder\n');
    expect(status).toBe(2);
  });

  test('are matched by patterns, whose own name wins where there is such a file', () => {
    const cwd = folderWith({ ...files, 'week/[b].lentil': GOOD });
    const all = ['week/a.lentil', 'week/b.lentil', 'week/[b].lentil'].sort();
    expect(paths(checked(['week/*.lentil'], cwd))).toEqual(all);
    expect(paths(checked(['**/*.lentil'], cwd))).toEqual(all);
    expect(paths(checked(['week/{a,b}.lentil'], cwd))).toEqual(['week/a.lentil', 'week/b.lentil']);
    expect(paths(checked(['week/[b].lentil'], cwd))).toEqual(['week/[b].lentil']);
    expect(lentil(['check', 'month/*.lentil'], { cwd })).toMatchObject({
      status: 2,
      stderr: 'lentil: month/*.lentil: no file matches it\n',
    });
  });

  test('may be named like a file', () => {
    const cwd = folderWith({ 'x.lentil/a.lentil': GOOD });
    mkdirSync(join(cwd, 'x.lentil', 'empty.lentil'));
    expect(paths(checked(['x.lentil'], cwd))).toEqual(['x.lentil/a.lentil']);
  });
});

test('a file named outright is read whatever its name', () => {
  expect(paths(checked(['notes.txt'], folderWith({ 'notes.txt': GOOD })))).toEqual(['notes.txt']);
});

describe('standard input', () => {
  test('is read for a dash', () => {
    const { files, totals } = checked(['-'], folderWith({}), BAD);
    expect(files[0]?.path).toBe('-');
    expect(totals).toMatchObject({ files: 1, orders: 1, reject: 1, errors: 1 });
  });

  test('may be empty', () => {
    expect(checked(['-'], folderWith({}), '').totals).toMatchObject({ files: 1, orders: 0, errors: 0 });
  });

  test('stands beside files', () => {
    const cwd = folderWith({ 'a.lentil': GOOD });
    expect(paths(checked(['a.lentil', '-', '-'], cwd, BAD))).toEqual(['a.lentil', '-']);
  });
});

describe('text that is none', () => {
  test.each([
    ['bytes of another encoding', Buffer.from('order TT-1\n  note "h\xf6he"\n', 'latin1'), 'it is not UTF-8 text'],
    ['UTF-16', Buffer.from(`\ufeff${GOOD}`, 'utf16le'), 'it is UTF-16; save it as UTF-8'],
  ])('%s', (_, bytes, error) => {
    const cwd = folderWith({ 'a.lentil': bytes, 'b.lentil': GOOD });
    const { status, stdout, stderr } = lentil(['check', '--format', 'json', '.'], { cwd });
    const { files, totals } = JSON.parse(stdout) as CheckJson;
    expect(files[0]).toEqual({ path: 'a.lentil', error, orders: [], findings: [] });
    expect(files[1]?.orders[0]?.verdict).toBe('accept');
    expect(totals).toMatchObject({ files: 2, orders: 1 });
    expect(stderr).toBe(`lentil: a.lentil: ${error}\n`);
    expect(status).toBe(2);
    const lines = lentil(['check', '--format', 'jsonl', '.'], { cwd }).stdout.trim().split('\n');
    expect(JSON.parse(lines[0] ?? '')).toEqual({ lentil: 1, path: 'a.lentil', error, order: null, findings: [] });
  });
});

describe('the bench file', () => {
  const bench = (step: string): string => `instrument BF-1\n  kind digital focimeter\n  reads-to ${step}\n`;
  // One eighth off at a limit of 0.13: only an instrument that shows eighths leaves it near the limit.
  const order = pair('TT-9').replace('by MT', 'by MT with BF-1').replace('+1.02 -1.48', '+1.12 -1.62');
  const reservations = (path: string, cwd: string, input?: string) => {
    const { files } = checked([path], cwd, input);
    return files[0]?.orders[0]?.reservations;
  };

  test('of the folder or the nearest above holds', () => {
    const cwd = folderWith({
      'bench.lentil': bench('0.125'),
      'day/orders.lentil': order,
      'week/bench.lentil': bench('0.01'),
      'week/day/orders.lentil': order,
      'orders.lentil': order,
    });
    expect(reservations('orders.lentil', cwd)).toEqual(['near-the-limit']);
    expect(reservations('day/orders.lentil', cwd)).toEqual(['near-the-limit']);
    expect(reservations('week/day/orders.lentil', cwd)).toEqual([]);
    expect(reservations('-', cwd, order)).toEqual(['near-the-limit']);
  });

  test('gives way to what the file declares itself', () => {
    const cwd = folderWith({ 'bench.lentil': bench('0.125'), 'a.lentil': `${bench('0.01')}\n${order}` });
    expect(reservations('a.lentil', cwd)).toEqual([]);
  });

  test('that cannot be read is told once, and the status says so', () => {
    const cwd = folderWith({ 'bench.lentil': Buffer.from([0xff, 0x41]), 'a.lentil': GOOD, 'b.lentil': GOOD });
    const { status, stderr } = lentil(['check', 'a.lentil', 'b.lentil'], { cwd });
    expect(stderr).toBe(`lentil: ${join(cwd, 'bench.lentil')}: it is not UTF-8 text\n`);
    expect(status).toBe(2);
  });
});
