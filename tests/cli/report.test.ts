import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type ReportJson, reportInHtml } from '../../exchange';
import { reportOf } from '../exchange/report/support';
import { BENCH, yearOfWork } from '../support/year-of-work';
import { command, lentil } from './support/command';
import { BAD, folderWith, GOOD } from './support/folder';

const { 'bench.lentil': _, ...orders } = yearOfWork(2).files;
const files = { ...orders, 'bench.lentil': BENCH };

const jsonOf = (args: readonly string[], cwd: string): ReportJson =>
  JSON.parse(lentil(['report', '--format', 'json', ...args], { cwd }).stdout);

test('says of a folder what the library says', () => {
  const cwd = folderWith(files);
  const ours = jsonOf(['.'], cwd);
  // Files are gone through by folder and name; the bench file holds no orders, and is a file all the same.
  const theirs = reportOf(Object.fromEntries(Object.entries(files).sort()), { bench: BENCH });
  expect(ours).toEqual(theirs);
  expect(lentil(['report', '.'], { cwd }).stdout).toBe(reportInHtml(theirs));
});

test('orders of paths, folders, patterns and standard input are read once each', () => {
  const cwd = folderWith({ 'a/good.lentil': GOOD, 'a/bad.lentil': BAD });
  expect(jsonOf(['a', 'a/*.lentil', 'a/good.lentil'], cwd).scope).toMatchObject({ files: 2, orders: 2 });
  const piped = lentil(['report', '--format', 'json', '-'], { input: BAD });
  expect(JSON.parse(piped.stdout).firstPass).toMatchObject({ read: 1, reject: 1 });
});

describe('the status', () => {
  test.each([
    ['rejected orders are no failure', ['.'], 0],
    ['a missing file', ['none.lentil', '.'], 2],
    ['a file used as a folder', ['good.lentil/deeper'], 2],
    ['no path', [], 2],
    ['an unknown format', ['--format', 'pdf', '.'], 2],
    ['an unknown standard', ['--standard', 'z80.1-2051', 'plain.lentil'], 2],
    ['a day', ['--date', '2026-12-01', '.'], 0],
    ['a day that is none', ['--date', '2026-02-30', '.'], 2],
    ['a day in another form', ['--date', '1/12/2026', '.'], 2],
    ['a folder that cannot be written to', ['--out', 'none/report.html', '.'], 2],
  ])('%s', (_, args, status) => {
    const plain = GOOD.replace('standard z80.1-2015\n', '');
    const cwd = folderWith({ 'good.lentil': GOOD, 'bad.lentil': BAD, 'plain.lentil': plain });
    expect(lentil(['report', ...args], { cwd }).status).toBe(status);
  });
});

test('damaged files among many are named, on standard error and at the end of the report, and the rest is reported', () => {
  const cut = Buffer.concat([Buffer.from(GOOD), Buffer.from([0xe2, 0x82])]);
  const wide = Buffer.from(`\uFEFF${GOOD}`, 'utf16le');
  const zeros = Buffer.concat([Buffer.from(GOOD.slice(0, 90)), Buffer.alloc(400)]);
  const half = GOOD.slice(0, GOOD.indexOf('  reading') + 12);
  const cwd = folderWith({
    ...files,
    '2026/cut.lentil': cut,
    '2026/half.lentil': half,
    '2026/wide.lentil': wide,
    '2026/zeros.lentil': zeros,
  });
  const { status, stdout, stderr } = lentil(['report', '--format', 'json', '.'], { cwd });
  const report: ReportJson = JSON.parse(stdout);
  expect(status).toBe(2);
  expect(stderr.trim().split('\n')).toEqual([
    expect.stringContaining('2026/cut.lentil: it is not UTF-8 text'),
    expect.stringContaining('2026/wide.lentil: it is UTF-16'),
    expect.stringContaining('2026/zeros.lentil: it holds bytes of zero'),
  ]);
  expect(report.unreadable.map(({ path }) => path)).toEqual([
    '2026/cut.lentil',
    '2026/wide.lentil',
    '2026/zeros.lentil',
  ]);
  // What can be read of the file that was cut off between two characters is an order without a reading.
  expect(report.scope).toMatchObject({ files: Object.keys(files).length + 4, filesUnreadable: 3, orders: 52 * 2 + 1 });
  const page = lentil(['report', '.'], { cwd }).stdout;
  expect(page.indexOf('Files that could not be read')).toBeGreaterThan(0);
  expect(page).toContain('<code>2026/wide.lentil</code>');
});

test('ages are counted to the day that is given, and to the newest reading without one', () => {
  const cwd = folderWith({ 'a.lentil': GOOD.replace('    pd     64.5\n    prism  R 0  L 0\n', '') });
  expect(jsonOf(['a.lentil'], cwd)).toMatchObject({ scope: { date: '2026-11-23', dateGiven: false } });
  const later = jsonOf(['--date', '2026-12-23', 'a.lentil'], cwd);
  expect(later).toMatchObject({ scope: { date: '2026-12-23', dateGiven: true }, open: { oldest: [{ age: 30 }] } });
});

describe('a file for the report', () => {
  test('is written whole, with nothing on standard output', () => {
    const cwd = folderWith({ 'good.lentil': GOOD });
    const { status, stdout, stderr } = lentil(['report', '--out', 'report.html', '.'], { cwd });
    expect([status, stdout, stderr]).toEqual([0, '', 'lentil: the report is in report.html\n']);
    expect(readFileSync(join(cwd, 'report.html'), 'utf8')).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
    expect(readdirSync(cwd).sort()).toEqual(['good.lentil', 'report.html']);
  });

  test('takes the place of an older one and keeps its rights', () => {
    const cwd = folderWith({ 'good.lentil': GOOD, 'report.html': 'old' });
    const out = join(cwd, 'report.html');
    spawnSync('chmod', ['640', out]);
    lentil(['report', '--out', 'report.html', '.'], { cwd });
    expect(readFileSync(out, 'utf8')).not.toContain('old</');
    expect(statSync(out).mode & 0o777).toBe(0o640);
  });

  test('is left as it was when the command is stopped', async () => {
    const many = Array.from({ length: 3000 }, (_, at) => GOOD.replace('order TT-1', `order TT-${at}`)).join('\n');
    const cwd = folderWith({ 'many.lentil': many });
    writeFileSync(join(cwd, 'report.html'), 'the old one');
    const child = spawn(process.execPath, [command, 'report', '--out', 'report.html', 'many.lentil'], { cwd });
    setTimeout(() => child.kill('SIGINT'), 400);
    await new Promise((ended) => child.on('close', ended));
    const left = readFileSync(join(cwd, 'report.html'), 'utf8');
    // On a very fast machine it may have been done by then, and then all of it is there.
    expect(left === 'the old one' || left.endsWith('</html>\n')).toBe(true);
    expect(readdirSync(cwd).sort()).toEqual(['many.lentil', 'report.html']);
  });

  test('that cannot be written is told with its reason', () => {
    const cwd = folderWith({ 'good.lentil': GOOD });
    const { stderr } = lentil(['report', '--out', 'none/report.html', '.'], { cwd });
    expect(stderr).toBe('lentil: none/report.html: no such file or folder\n');
    expect(existsSync(join(cwd, 'none'))).toBe(false);
  });
});
