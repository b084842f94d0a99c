/** One order number with other powers in two files of a run is told in every form of the output, in threads and in parts. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { CheckJson } from '../../exchange';
import { lentil } from './support/command';
import { folderWith, GOOD, pair } from './support/folder';

/** GOOD is order TT-1; in line 3 stands its name. */
const OTHER = GOOD.replace('R       +1.00 -1.50 x 010', 'R       +2.00 -1.50 x 010').replace('+1.02', '+2.02');
const TRANSPOSED = GOOD.replace('R       +1.00 -1.50 x 010', 'R       -0.50 +1.50 x 100');

const reservations = (cwd: string, ...args: readonly string[]): readonly unknown[] =>
  (JSON.parse(lentil(['check', '--format', 'json', '--brief', ...args], { cwd }).stdout) as CheckJson).files.flatMap(
    ({ path, orders }) => orders.map((order) => [path, order.verdict, order.reservations]),
  );

describe('an order number in two files', () => {
  test.each([[[]], [['--threads', '2']], [['--cache', 'kept']]])(
    'with other powers is a reservation of both (%j)',
    (options) => {
      const cwd = folderWith({ 'a.lentil': GOOD, 'b.lentil': pair('TT-9'), 'week/c.lentil': OTHER });
      const expected = [
        ['a.lentil', 'accept', ['order-elsewhere']],
        ['b.lentil', 'accept', []],
        ['week/c.lentil', 'accept', ['order-elsewhere']],
      ];
      expect(reservations(cwd, ...options, '.')).toEqual(expected);
      expect(reservations(cwd, ...options, '.')).toEqual(expected);
      // A run that does not see the other file knows nothing of it, whatever a cache holds.
      expect(reservations(cwd, ...options, 'a.lentil')).toEqual([['a.lentil', 'accept', []]]);
    },
  );

  test.each([
    ['copied', GOOD],
    ['read once more', `${GOOD}\n  reading 2026-11-24\n    R      +1.02 -1.48 x 010\n`],
    ['transposed', TRANSPOSED],
    ['of another name', OTHER.replace('TT-1', 'TT-10')],
  ])('%s is no fault', (_, text) => {
    const cwd = folderWith({ 'a.lentil': GOOD, 'b.lentil': text });
    expect(lentil(['check', '.'], { cwd }).stdout).not.toContain('order-elsewhere');
  });

  test.each(['text', 'json', 'jsonl', 'sarif', 'junit'])('is told with file and line as %s', (format) => {
    const cwd = folderWith({ 'a.lentil': GOOD, 'b.lentil': OTHER });
    const { stdout } = lentil(['check', '--strict', '--format', format, '.'], { cwd });
    expect(stdout).toContain('has other powers in b.lentil, line 3.');
    expect(stdout).toContain('has other powers in a.lentil, line 3.');
  });

  test('is told of a large file, which is judged in parts', () => {
    const many = Array.from({ length: 4000 }, (_, at) => pair(`X-${at}`).replace('standard z80.1-2015\n', '')).join(
      '\n',
    );
    const cwd = folderWith({
      'large.lentil': `standard z80.1-2015\n${many}`,
      'small.lentil': pair('X-3999').replace('R       +1.00', 'R       +9.00'),
    });
    expect(readFileSync(join(cwd, 'large.lentil')).length).toBeGreaterThan(1024 * 1024);
    const { stdout } = lentil(['check', '--threads', '2', '.'], { cwd });
    expect(stdout.match(/\[order-elsewhere\]/g)).toHaveLength(2);
    expect(stdout).toMatch(/“X-3999” has other powers in small\.lentil, line 3/);
  });

  test('with odd names, marks and line ends is found as well', () => {
    const odd = (text: string): string => `\ufeff${text.replace('TT-1', '"Ä “1” ½"').replaceAll('\n', '\r')}`;
    const cwd = folderWith({ 'a.lentil': odd(GOOD), 'b.lentil': odd(OTHER).replaceAll('\r', '\r\n') });
    expect(lentil(['check', '.'], { cwd }).stdout.match(/\[order-elsewhere\]/g)).toHaveLength(2);
  });
});
