import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { textAfter } from './line-edits';

export const meridianMissing: Rule = {
  code: 'meridian-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A power is written by its principal meridians and the second one is missing, or has no direction.',
    why: 'One meridian says nothing about the other. Taken as a sphere the lens may be wrong by the whole cylinder.',
    example: { wrong: 'R -4.50 @ 022 / -5.25', right: 'R -4.50 @ 022 / -5.25 @ 112' },
    fix: 'Where the second power is there, the fix writes its meridian, 90 degrees from the first.',
    source:
      'Transposition as taught by the National Federation of Opticianry Schools: the second meridian lies 90 degrees from the first.',
  },
  message: () => 'The second principal meridian is missing. What is the power across the first one?',
  fixes: across,
};

function across(site: FixSite): readonly Fix[] {
  const first = /@\s*(\d{1,3})\D.*[\d.,]$/.exec(typed(site))?.[1];
  if (first === undefined || !/[/,;]/.test(typed(site)) || Number(first) > 180) return [];
  const second = Number(first) > 90 ? Number(first) - 90 : Number(first) + 90;
  const at = /^\s*@/.exec(textAfter(site))?.[0].length ?? 0;
  const { finding } = site;
  const text = `${typed(site)} @ ${String(second).padStart(3, '0')}`;
  return [replace({ ...site, finding: { ...finding, end: finding.end + at } }, `Write ${text}`, text, false)];
}
