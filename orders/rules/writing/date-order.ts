import { isDay } from '../../../grammar';
import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const dateOrder: Rule = {
  code: 'date-order',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A date is not written as year, month, day.',
    why: 'The date 01/12/2026 is 12 January to one reader and 1 December to the next. Which reading is the newest hangs on it.',
    example: { wrong: 'due 01/12/2026', right: 'due 2026-12-01' },
    fix: 'One fix for each reading that the calendar has: day first, or month first.',
    source: 'ISO 8601.',
  },
  message: (data) => `Day or month first? Write ${data.typed} as year-month-day.`,
  fixes: bothReadings,
};

function bothReadings(site: FixSite): readonly Fix[] {
  const [first = '', second = '', year = ''] = typed(site).split(/[/.]/);
  const [a, b] = [first.padStart(2, '0'), second.padStart(2, '0')];
  const days = new Set([`${year}-${b}-${a}`, `${year}-${a}-${b}`]);
  return [...days].filter(isDay).map((day) => replace(site, `Write ${day}, ${inWords(day)}`, day, false));
}

const inWords = (day: string): string =>
  new Date(`${day}T00:00:00Z`).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });
