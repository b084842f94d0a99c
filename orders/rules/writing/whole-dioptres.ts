import { type Rule, replace, typed } from '../rule';
import { standsAlone } from './line-edits';

export const wholeDioptres: Rule = {
  code: 'whole-dioptres',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A power of one or two digits has no decimal point and is taken as whole dioptres.',
    why: 'With both decimals written nobody has to ask whether a point was lost.',
    example: { wrong: 'R -4 -0.75 x 022', right: 'R -4.00 -0.75 x 022' },
    fix: 'Writes point and decimals.',
    source: 'Common practice, no source.',
  },
  message: () => 'Taken as whole dioptres. Two decimals leave no doubt.',
  fixes: (site) => {
    const text = `${typed(site).normalize('NFKC')}.00`;
    // Two digits may have lost a point (-1.0), so whoever applies the fix has to look.
    const safe = /(?:^|\D)\d\.00$/.test(text) && standsAlone(site);
    return [replace(site, `Write ${text}`, text, safe)];
  },
};
