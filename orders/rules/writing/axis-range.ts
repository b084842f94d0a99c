import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const axisRange: Rule = {
  code: 'axis-range',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'An axis is not a whole number from 1 to 180.',
    why: 'Beyond 180 the figure is a slip of the pen, and which digit is wrong cannot be told. A sign before an axis is a slip as well.',
    example: { wrong: 'R -4.50 -0.75 x 190', right: 'R -4.50 -0.75 x 109' },
    fix: 'Where only a sign or an empty decimal place stands in the way, one fix takes it off. A figure beyond 180 has none.',
    source: 'ISO 8429:1986 counts cylinder axes up to 180. Whole degrees are common practice, no source.',
  },
  message: ({ digits }) => `An axis is a whole number from 1 to 180. ${digits} is not taken.`,
  fixes: withoutAddition,
};

function withoutAddition(site: FixSite): readonly Fix[] {
  const figure = /^[^\d]?(\d{1,3})(?:[.,]0*)?$/.exec(typed(site))?.[1];
  const degrees = Number(figure);
  if (figure === undefined || degrees < 1 || degrees > 180) return [];
  const text = figure.padStart(3, '0');
  return [replace(site, `Write ${text}`, text, false)];
}
