import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { textBefore } from './line-edits';

export const lengthNegative: Rule = {
  code: 'length-negative',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A length has a minus.',
    why: 'No distance of a frame or a face is less than nothing. The dash stands between two figures, or a power slipped into the line of a length.',
    example: { wrong: 'pd -63', right: 'pd 63' },
    fix: 'Takes the sign off. Where the dash follows a figure there are two fixes: a pair of figures, or a decimal point.',
    source: 'Common practice, no source.',
  },
  message: () => 'A length has no sign. Does the dash stand between two figures?',
  fixes: withoutSign,
};

function withoutSign(site: FixSite): readonly Fix[] {
  const figure = typed(site).replace(/^[^\d.,\uFF10-\uFF19]+/, '');
  const first = /\d+$/.exec(textBefore(site))?.[0];
  if (first === undefined) return [replace(site, `Write ${figure}`, figure, false)];
  const pair = replace(site, `Two figures: write ${first}/${figure}`, `/${figure}`, false);
  if (/[.,]/.test(figure)) return [pair];
  return [pair, replace(site, `One figure: write ${first}.${figure}`, `.${figure}`, false)];
}
