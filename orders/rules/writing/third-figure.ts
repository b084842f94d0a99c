import type { Fix } from '../../finding';
import { type FixSite, type Rule, typed } from '../rule';
import { replaceApart } from './line-edits';

/** A larger figure is no add. The bound only decides what is offered: common practice, no source. */
const LARGEST_ADD = 10;

export const thirdFigure: Rule = {
  code: 'third-figure',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A third figure without a word: it has a sign, a decimal point or is above 180, so it is no axis.',
    why: 'It is most likely an add. Adds head the list of what laboratories have to call back for.',
    example: { wrong: 'R -4.50 -0.75 +2.00', right: 'R -4.50 -0.75 x 022 add +2.00' },
    fix: 'Writes add before the figure.',
    source: 'Reading adds were 30.5 % of office errors in a laboratory survey (Pacific University thesis, 1992).',
  },
  message: () => 'What is the third figure? It is not taken.',
  fixes: asAdd,
};

function asAdd(site: FixSite): readonly Fix[] {
  const digits = typed(site).replace(/^[^\d.,]/, '');
  const value = Number(digits.replace(',', '.'));
  const dioptres = /^\d{3,}$/.test(digits) ? value / 100 : value;
  if (!(dioptres <= LARGEST_ADD)) return [];
  return [replaceApart(site, `Write add +${digits}`, `add +${digits}`, false)];
}
