import { type Rule, replace, typed } from '../rule';
import { withDigits } from './line-edits';

export const pointMissing: Rule = {
  code: 'point-missing',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A power of three or more digits has no decimal point and is taken as hundredths of a dioptre.',
    why: 'Some doctors write 150 for 1.50. The bench reads it so, but a form or a machine may take 15.0 or 150.',
    example: { wrong: 'R -450 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Writes the point.',
    source: 'A French note on reading spectacle corrections (2022), and a retailer’s page on prescription figures.',
  },
  message: ({ sign, value }) => `Taken as ${sign}${Number(value).toFixed(2)}; the point is missing.`,
  fixes: (site) => {
    const text = withDigits(typed(site), Number(site.finding.data.value).toFixed(2));
    return [replace(site, `Write ${text}`, text, false)];
  },
};
