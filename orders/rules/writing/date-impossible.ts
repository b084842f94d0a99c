import { isDay } from '../../../grammar';
import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const dateImpossible: Rule = {
  code: 'date-impossible',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A date in the order year, month, day is not in the calendar.',
    why: 'Which reading is the newest, and whether a calibration is overdue, hangs on the date.',
    example: { wrong: 'due 2026-13-01', right: 'due 2026-01-13' },
    fix: 'Where day and month changed places, the fix puts them right.',
    source: 'ISO 8601.',
  },
  message: (data) => `There is no ${data.typed} in the calendar. Which day is meant?`,
  fixes: changedPlaces,
};

function changedPlaces(site: FixSite): readonly Fix[] {
  const text = typed(site).replace(/^(\d{4})-(\d\d)-(\d\d)/, '$1-$3-$2');
  return isDay(text.slice(0, 10)) ? [replace(site, `Write ${text}`, text, false)] : [];
}
