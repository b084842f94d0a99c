import type { Fix } from '../../finding';
import type { FixSite, Rule } from '../rule';
import { MINUS, replaceApart, textBefore } from './line-edits';

export const loneMark: Rule = {
  code: 'lone-mark',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A dash or a stroke stands alone in the place of a sphere or a cylinder.',
    why: 'A lone dash says “no value”; it is not a minus. Beside a figure the next reader takes it for one.',
    example: { wrong: 'R -2.25 -', right: 'R -2.25 DS' },
    fix: 'Writes plano for a sphere and DS for a cylinder.',
    source: 'Two retailers’ pages on prescription figures, and a forum thread on what “sph” in the cylinder box means.',
  },
  message: ({ place }) =>
    place === 'sphere' ? 'The mark alone is taken as plano.' : 'The mark alone is taken as no cylinder.',
  fixes: inWords,
};

function inWords(site: FixSite): readonly Fix[] {
  // A dash behind another dash may belong to it; which of them is the value cannot be told.
  if (MINUS.test(textBefore(site).trimEnd().slice(-1))) return [];
  const word = site.finding.data.place === 'sphere' ? 'plano' : 'DS';
  return [replaceApart(site, `Write ${word}`, word, true)];
}
