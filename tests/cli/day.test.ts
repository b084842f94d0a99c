import { expect, test } from 'vitest';
import { lentil } from './support/command';

const TEXT =
  'standard z80.1-2015\norder A\n  R -2.00\n  make R\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';
const check = (today: string) => lentil(['check', '-'], { input: TEXT, env: { LENTIL_TODAY: today } });

test('a reading of a day that is still to come is no accept', () => {
  const { status, stdout } = check('2026-11-23');
  expect(status).toBe(1);
  expect(stdout).toContain('date-implausible');
  expect(stdout).toContain('today is 2026-11-23');
});

test.each(['2026-11-24', 'none'])('on %s it is one', (today) => {
  const { status, stdout } = check(today);
  expect(stdout).not.toContain('date-implausible');
  expect(status).toBe(0);
});

test('without a word of the environment the day is that of the clock', () => {
  const ahead = TEXT.replace('2026', String(new Date().getFullYear() + 2));
  expect(lentil(['check', '-'], { input: ahead, env: { LENTIL_TODAY: '' } }).stdout).toContain('date-implausible');
});
