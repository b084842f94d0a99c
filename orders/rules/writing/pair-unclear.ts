import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { isChained, textBefore } from './line-edits';

export const pairUnclear: Rule = {
  code: 'pair-unclear',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'Two figures of a PD that may be distance and near, right and left, or the two parts of one decimal figure.',
    why: 'A pair 62/59 was entered as right and left, which makes a PD of 121. Both above 40.5 are taken as distance and near and both up to 40.5 as right and left; a pair that fits neither way has a slip in one of its figures.',
    example: { wrong: 'pd 63/32', right: 'pd 63 near 60' },
    fix: 'One fix for each reading.',
    source: 'Two question pages about PDs, and a master’s paper on a pair of unequal lenses (1998) with “PD 64/61”.',
  },
  message: () => 'What do these two figures mean: distance and near, right and left, or one figure with decimals?',
  fixes: eachReading,
};

function eachReading(site: FixSite): readonly Fix[] {
  const [, first, mark, second] = /^([\d.]+)\s*(\D)\s*([\d.,]+)$/.exec(typed(site)) ?? [];
  if (isChained(site) || first === undefined || second === undefined) return [];
  const write = (meaning: string, text: string): Fix => replace(site, `${meaning}: write ${text}`, text, false);
  const fixes = [write('Right and left', `R ${first} L ${second}`)];
  if (!/\bnear\b/i.test(textBefore(site))) fixes.unshift(write('Distance and near', `${first} near ${second}`));
  if (mark !== '/' && /^\d+$/.test(first) && /^\d+$/.test(second))
    fixes.push(write('One figure', `${first}.${second}`));
  return fixes;
}
