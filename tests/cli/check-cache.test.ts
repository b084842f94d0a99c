import { chmodSync, readdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { lentil } from './support/command';
import { BAD, DOUBTFUL, folderWith, GOOD } from './support/folder';

const FILES = { 'work/a.lentil': GOOD, 'work/b.lentil': BAD, 'work/c.lentil': DOUBTFUL };

interface Kept {
  readonly cwd: string;
  readonly run: (...options: readonly string[]) => string;
  /** Paths of the entries with the time at which each was written last. */
  readonly entries: () => Map<string, number>;
}

/** A folder of work with a cache beside it that holds one run. */
function kept(files: Readonly<Record<string, string>> = FILES): Kept {
  const cwd = folderWith(files);
  const run: Kept['run'] = (...options) => lentil(['check', '--cache', 'kept', ...options, 'work'], { cwd }).stdout;
  const entries: Kept['entries'] = () =>
    new Map(
      readdirSync(join(cwd, 'kept'), { recursive: true, withFileTypes: true })
        .filter((one) => one.isFile())
        .map(({ parentPath, name }) => join(parentPath, name))
        .map((path) => [path, statSync(path).mtimeMs]),
    );
  run();
  return { cwd, run, entries };
}

/** How many entries another run writes, new ones and anew; it tells what a run without a cache tells. */
function written({ cwd, run, entries }: Kept, ...options: readonly string[]): number {
  const before = entries();
  expect(run(...options)).toBe(lentil(['check', ...options, 'work'], { cwd }).stdout);
  return [...entries()].filter(([path, time]) => before.get(path) !== time).length;
}

describe('the cache of a check', () => {
  test('is asked a second time, and nothing is written', () => {
    const work = kept();
    expect(work.entries().size).toBe(3);
    expect(written(work)).toBe(0);
  });

  test('gives what it holds, and does not judge again', () => {
    const work = kept({ 'work/a.lentil': GOOD });
    const [path] = work.entries().keys();
    const entry = readFileSync(path as string, 'utf8');
    expect(entry).toContain('TT-1\\taccept');
    expect(work.run()).toContain('TT-1  accept');
  });

  test.each(['text', 'json', 'jsonl', 'sarif', 'junit'])('gives every character again as %s', (format) => {
    const odd = GOOD.replace('TT-1', '"−½ 🕶"').replace('frame', 'frame A 20 B 90\n  frame');
    const work = kept({ 'work/a.lentil': `\ufeff${odd}widgt “−½ 🕶”\n` });
    written(work, '--format', format);
    expect(written(work, '--format', format)).toBe(0);
  });

  test('judges a file again when its text changed, and no other', () => {
    const work = kept();
    writeFileSync(join(work.cwd, 'work/b.lentil'), GOOD);
    expect(written(work)).toBe(1);
    expect(work.entries().size).toBe(3);
  });

  test.each([
    ['the format', ['--format', 'json']],
    ['the standard', ['--standard', 'iso-21987-2017']],
    ['strictness', ['--strict']],
    ['the guard', ['--guard', 'accept-when-sure']],
  ])('keeps results apart by %s', (_, options) => expect(written(kept(), ...options)).toBe(3));

  test('judges again when the bench file changed', () => {
    const work = kept({ ...FILES, 'bench.lentil': 'instrument FOC-A\n' });
    writeFileSync(join(work.cwd, 'bench.lentil'), 'instrument FOC-B\n');
    expect(written(work)).toBe(3);
  });

  test.each([
    ['cut short', (path: string) => truncateSync(path, 100)],
    ['emptied', (path: string) => truncateSync(path, 0)],
    [
      'changed by a letter',
      (path: string) => writeFileSync(path, readFileSync(path, 'utf8').replace('accept', 'accepd')),
    ],
    ['of another version', (path: string) => writeFileSync(path, `0${readFileSync(path, 'utf8').slice(1)}`)],
  ])('takes no entry that was %s', (_, damage) => {
    const work = kept({ 'work/a.lentil': GOOD });
    const [path] = work.entries().keys();
    damage(path as string);
    expect(written(work)).toBe(1);
    expect(written(work)).toBe(0);
  });

  test('keeps nothing of a file that could not be read', () => {
    const cwd = folderWith({ 'work/a.lentil': GOOD });
    writeFileSync(join(cwd, 'work/b.lentil'), Buffer.from([0xff, 0xfe, 0x41, 0]));
    const run = () => lentil(['check', '--cache', 'kept', 'work'], { cwd });
    expect(run()).toEqual(run());
    expect(run()).toMatchObject({ status: 2, stderr: expect.stringContaining('work/b.lentil: it is UTF-16') });
  });

  test('has to be a folder', () => {
    const cwd = folderWith({ 'work/a.lentil': GOOD, kept: 'a file' });
    const { status, stderr } = lentil(['check', '--cache', 'kept', 'work'], { cwd });
    expect(status).toBe(2);
    expect(stderr).toBe('lentil: --cache kept: it is a file\n');
  });

  test.skipIf(process.getuid?.() === 0)('may be a folder that cannot be written', () => {
    const cwd = folderWith({ 'work/a.lentil': GOOD, 'kept/.keep': '' });
    chmodSync(join(cwd, 'kept'), 0o500);
    expect(lentil(['check', '--cache', 'kept', 'work'], { cwd }).status).toBe(0);
    chmodSync(join(cwd, 'kept'), 0o700);
  });
});
