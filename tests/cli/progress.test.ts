import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Progress } from '../../cli/progress';

const written: string[] = [];
const terminals = { stderr: process.stderr.isTTY, stdout: process.stdout.isTTY };

function run(stderr: boolean, stdout: boolean, seconds: number): void {
  process.stderr.isTTY = stderr;
  process.stdout.isTTY = stdout;
  const progress = new Progress();
  for (let told = 1; told <= seconds * 10; told++) {
    vi.advanceTimersByTime(100);
    progress.tell(told * 100, 'week/orders.lentil');
  }
  progress.clear();
}

beforeEach(() => {
  written.length = 0;
  vi.useFakeTimers();
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  process.stderr.isTTY = terminals.stderr;
  process.stdout.isTTY = terminals.stdout;
});

describe('progress', () => {
  test('is shown on a terminal after a second, now and then, and wiped at the end', () => {
    run(true, false, 3);
    expect(written[0]).toMatch(/^\r.*1000 orders read, now week\/orders\.lentil$/);
    expect(written.length).toBeLessThan(15);
    expect(written.at(-1)).toBe(`\r${String.fromCharCode(27)}[K`);
  });

  test.each([
    ['short work', true, false, 0.9],
    ['a pipe', false, false, 3],
    ['results that go to the terminal themselves', true, true, 3],
  ])('is not shown for %s', (_, stderr, stdout, seconds) => {
    run(stderr, stdout, seconds);
    expect(written).toEqual([]);
  });
});
