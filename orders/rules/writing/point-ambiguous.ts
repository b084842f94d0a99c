import type { FindingData, Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { withDigits } from './line-edits';

/** Beyond this no spectacle lens is made, so whole dioptres above it are not offered. */
const LARGEST_POWER = 40;

export const pointAmbiguous: Rule = {
  code: 'point-ambiguous',
  family: 'writing',
  level: 'error',
  page: {
    checks:
      'A power of two digits without a point that are as likely hundredths as whole dioptres: 12, 25, 37, 50, 62, 75, 87, or a leading zero.',
    why: 'On prescriptions -75 and -50 stand for -0.75 and -0.50, and -12 may be either of two lenses twelve dioptres apart.',
    example: { wrong: 'R -12', right: 'R -12.00' },
    fix: 'One fix for each power that can be meant.',
    source: 'A retailer’s page on prescription figures.',
  },
  message: (data) =>
    `The point is missing: is it ${meant(data)
      .map((digits) => `${data.sign}${digits}`)
      .join(' or ')}?`,
  fixes: eachPower,
};

function eachPower(site: FixSite): readonly Fix[] {
  return meant(site.finding.data).map((digits) => {
    const text = withDigits(typed(site), digits);
    return replace(site, `Write ${text}`, text, false);
  });
}

/** Whole dioptres first; behind a leading zero the point belongs after the zero. */
function meant({ digits }: FindingData): readonly string[] {
  const whole = Number(digits);
  const hundredths = String(digits).startsWith('0') ? whole / 10 : whole / 100;
  return (whole <= LARGEST_POWER ? [whole, hundredths] : [hundredths]).map((value) => value.toFixed(2));
}
