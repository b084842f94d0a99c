import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { isChained, textBefore } from './line-edits';

export const fraction: Rule = {
  code: 'fraction',
  family: 'writing',
  level: ({ value }) => (typeof value === 'number' ? 'hint' : 'error'),
  page: {
    checks: 'A prism amount is written as a fraction.',
    levels: 'A hint; an error where the fraction has no value, as in 1/0.',
    why: 'A stroke that is overlooked makes 12 out of 1/2.',
    example: { wrong: 'prism R 1/2 BU', right: 'prism R 0.50 BU' },
    fix: 'Writes the amount with a decimal point.',
    source: 'Common practice, no source.',
  },
  message: ({ value }) =>
    typeof value === 'number' ? `Taken as ${decimals(value)}.` : 'This fraction has no value. What is meant?',
  fixes: asDecimals,
};

function asDecimals(site: FixSite): readonly Fix[] {
  const { value } = site.finding.data;
  if (typeof value !== 'number' || isChained(site) || !/\/\s*\d/.test(typed(site))) return [];
  // In `1 1/2` the fraction is only a part of the amount.
  if (/\d\s*$/.test(textBefore(site))) return [];
  // A sign says that the prism is a change, so it stays, and a lone zero keeps it too.
  const sign = /^[^\d.,]/.exec(typed(site))?.[0] ?? '';
  const text = sign + decimals(Math.abs(value));
  return [replace(site, `Write ${text}`, text, Number(decimals(value)) === value)];
}

/** Two decimals, and a third where the fraction is an eighth. */
const decimals = (value: number): string => value.toFixed(Number(value.toFixed(2)) === value ? 2 : 3);
