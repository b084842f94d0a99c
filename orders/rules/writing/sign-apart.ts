import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { MINUS, textBefore } from './line-edits';

export const signApart: Rule = {
  code: 'sign-apart',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A blank stands between a sign and its figure.',
    why: 'The dash may be a minus or may only keep eye and figure apart. An order came in as “add - 2.00” and meant +2.00; taken as a minus the near power is wrong by 4.00 dioptres.',
    example: { wrong: 'R - 4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'One fix joins the sign to the figure. For a dash the other one takes it as a mark between the two and writes plus.',
    source: 'An opticians’ forum thread on a compensated lens; a retailer’s page where a lone dash means “no value”.',
  },
  message: ({ sign }) =>
    sign === '-'
      ? 'Taken as minus. Is the dash a minus, or does it only keep the two apart?'
      : 'Taken as plus. The sign belongs to the figure without a blank.',
  fixes: joined,
};

function joined(site: FixSite): readonly Fix[] {
  const before = textBefore(site);
  const figure = typed(site).replace(/^.[\s\u200B]*/, '');
  // A dash behind another dash, or before a signed figure, says nothing about the sign of the figure.
  if (MINUS.test(before.trimEnd().slice(-1))) return [];
  const write = (text: string): Fix => replace(site, `Write ${text}`, text, false);
  if (/^\D/.test(figure) && !/^[.,]/.test(figure)) return [write(figure)];
  if (site.finding.data.sign === '+') return [write(`+${figure}`)];
  const minus = write(`-${figure}`);
  const plus = write(`+${figure}`);
  return /\badd(?:ition)?\b/i.test(before) ? [plus, minus] : [minus, plus];
}
