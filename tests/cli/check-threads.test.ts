import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { command, lentil } from './support/command';
import { BAD, DOUBTFUL, folderWith, GOOD, pair } from './support/folder';

/** One file that is cut into many parts: defaults, an instrument, names said twice, something outside now and then. */
function longFile(orders: number): string {
  const blocks = Array.from({ length: orders }, (_, at) =>
    pair(at % 500 === 7 ? 'TWICE' : `N-${at}`, at % 9 === 0 ? '014' : '011')
      .replace(/^standard.*\n\n/, '')
      .replace('by MT', at % 3 === 0 ? 'by MT with FOC-A' : 'by MT')
      .replace('  supply  glazed\n', ''),
  );
  return `standard z80.1-2015\n\ndefaults\n  supply glazed\n\n${blocks.join('\n')}\ninstrument FOC-A\n  kind digital focimeter\n  zero +0.03\n`;
}

/** The same bytes and status from one thread as from several. */
function checkThreads(args: readonly string[], cwd: string): string {
  const one = lentil(['check', '--threads', '1', ...args], { cwd });
  expect(lentil(['check', '--threads', '3', ...args], { cwd })).toEqual(one);
  expect(one.stdout.length).toBeGreaterThan(0);
  return one.stdout;
}

describe('several threads', () => {
  const long = longFile(4000);

  test.each(['text', 'json', 'jsonl', 'sarif', 'junit'])('tell of one long file what one tells, as %s', (format) => {
    checkThreads(['--format', format, 'long.lentil'], folderWith({ 'long.lentil': long }));
  });

  test('are started for large work by themselves', () => {
    const cwd = folderWith({ 'long.lentil': long });
    expect(lentil(['check', 'long.lentil'], { cwd })).toEqual(
      lentil(['check', '--threads', '1', 'long.lentil'], { cwd }),
    );
  });

  test('know in every part what stands in the first and the last', () => {
    const said = checkThreads(['--format', 'jsonl', 'long.lentil'], folderWith({ 'long.lentil': long }));
    const codes = said
      .trimEnd()
      .split('\n')
      .flatMap((line) => (JSON.parse(line).findings as { code: string }[]).map(({ code }) => code));
    expect(codes.filter((code) => code === 'order-twice')).toHaveLength(8);
    expect(codes).not.toContain('instrument-unknown');
    expect(codes).not.toContain('standard-missing');
  });

  test('go through a folder in the order of its names, damaged files among them', () => {
    const files = Object.fromEntries(
      Array.from({ length: 3000 }, (_, at) => [
        `week-${String(at % 50).padStart(2, '0')}/J-${String(at).padStart(4, '0')}.lentil`,
        at % 700 === 3 ? Buffer.from([0xff, 0xfe, 0x41, 0]) : ([GOOD, BAD, DOUBTFUL][at % 3] as string),
      ]),
    );
    const cwd = folderWith({ ...files, 'bench.lentil': 'instrument FOC-A\n' });
    const told = JSON.parse(checkThreads(['--format', 'json', '.'], cwd)) as {
      files: { path: string; error?: string }[];
    };
    const paths = told.files.map(({ path }) => path);
    expect(paths).toEqual([...paths].sort());
    const { status, stderr, stdout } = lentil(['check', '.'], { cwd });
    expect(status).toBe(2);
    expect(stderr.trimEnd().split('\n')).toHaveLength(told.files.filter(({ error }) => error).length);
    expect(stderr).toContain('week-03/J-0003.lentil: it is UTF-16; save it as UTF-8');
    expect(stdout).toMatch(/^2995 orders in 3001 files: /m);
  });

  test('have no harm from a file that is one endless block', () => {
    const cwd = folderWith({ 'endless.lentil': `order E-1\n${'  R -1.00\n'.repeat(300_000)}`, 'good.lentil': GOOD });
    const { stdout, stderr } = lentil(['check', '--threads', '2', '--format', 'jsonl', '.'], { cwd });
    const orders = stdout.trimEnd().split('\n');
    expect(orders.map((line) => JSON.parse(line).order?.name)).toEqual(['E-1', 'TT-1']);
    expect(stderr).toBe('');
  });

  test('refuse a number that is none', () => {
    expect(lentil(['check', '--threads', '0', '.']).stderr).toContain('whole number from 1 to 99');
  });
});

describe('a stopped check', () => {
  test('ends at once and leaves no half-written entry in its cache', async () => {
    const cwd = folderWith({ 'long.lentil': longFile(12_000) });
    const child = spawn(process.execPath, [command, 'check', '--threads', '2', '--cache', 'kept', 'long.lentil'], {
      cwd,
    });
    await new Promise((done) => child.stdout.once('data', done));
    child.kill('SIGINT');
    const signal = await new Promise((done) => child.once('exit', (_, by) => done(by)));
    expect(signal).toBe('SIGINT');
    const entries = readdirSync(join(cwd, 'kept'), { recursive: true, withFileTypes: true }).filter((one) =>
      one.isFile(),
    );
    for (const { parentPath, name } of entries.filter((one) => one.name.endsWith('.json'))) {
      const text = readFileSync(join(parentPath, name), 'utf8');
      expect(() => JSON.parse(text.slice(text.indexOf('\n')))).not.toThrow();
    }
    expect(lentil(['check', '--cache', 'kept', 'long.lentil'], { cwd })).toEqual(
      lentil(['check', '--threads', '1', 'long.lentil'], { cwd }),
    );
  });
});
