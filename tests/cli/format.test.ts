import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { lentil } from './support/command';
import { folderWith } from './support/folder';

const UNTIDY = 'order A\r\nR-4.50-0.75x022  # kept\r\nL -4.25\r\n';
const TIDY = 'order A\r\n  R           -4.50 -0.75 x 022  # kept\r\n  L           -4.25\r\n';
const files = { 'tidy.lentil': TIDY, 'untidy.lentil': UNTIDY };
const textIn = (folder: string, name: string): string => readFileSync(join(folder, name), 'utf8');

test('files are laid out in place, and only those that change are named', () => {
  const cwd = folderWith(files);
  expect(lentil(['format', '.'], { cwd })).toMatchObject({ status: 0, stdout: 'untidy.lentil\n', stderr: '' });
  expect(textIn(cwd, 'untidy.lentil')).toBe(TIDY);
  expect(readdirSync(cwd).sort()).toEqual(['tidy.lentil', 'untidy.lentil']);
  expect(lentil(['format', '.'], { cwd })).toMatchObject({ status: 0, stdout: '' });
});

test('with --check nothing is written, and work to do is status 1', () => {
  const cwd = folderWith(files);
  expect(lentil(['format', '--check', '.'], { cwd })).toMatchObject({ status: 1, stdout: 'untidy.lentil\n' });
  expect(textIn(cwd, 'untidy.lentil')).toBe(UNTIDY);
  expect(lentil(['format', '--check', 'tidy.lentil'], { cwd }).status).toBe(0);
});

test('standard input is laid out on standard output', () => {
  expect(lentil(['format', '-'], { input: UNTIDY })).toMatchObject({ status: 0, stdout: TIDY });
  expect(lentil(['format', '--check', '-'], { input: UNTIDY })).toMatchObject({ status: 1, stdout: '-\n' });
});

test('a file that cannot be read is status 2, and the others are laid out', () => {
  const cwd = folderWith(files);
  const ran = lentil(['format', 'none.lentil', 'untidy.lentil'], { cwd });
  expect(ran.status).toBe(2);
  expect(ran.stderr).toBe('lentil: none.lentil: no such file or folder\n');
  expect(textIn(cwd, 'untidy.lentil')).toBe(TIDY);
});
