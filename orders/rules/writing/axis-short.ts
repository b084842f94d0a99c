import type { FindingData } from '../../finding';
import { type Rule, replace } from '../rule';

export const axisShort: Rule = {
  code: 'axis-short',
  family: 'writing',
  level: ({ digits }, block) => (digits === 1 && block === 'order' ? 'warning' : 'hint'),
  page: {
    checks: 'An axis has fewer than three digits.',
    levels: 'A warning for one digit in an order, a hint for two digits and for any axis that was read.',
    why: 'A box on a printed form hid the first digit of axis 153 and the order went out as 53. Two checks passed it, since both looked at the slip only. Three digits show that none was lost.',
    example: { wrong: 'R -4.50 -0.75 x 5', right: 'R -4.50 -0.75 x 005' },
    fix: 'Writes the axis with three digits. Look at the prescription first: the fix cannot know whether a digit was lost.',
    source: 'A wearer’s weblog about a retest at an optician (2009). Three digits are common practice, no source.',
  },
  message: ({ digits, value }) =>
    digits === 1
      ? `Taken as ${threeDigits(value)}. Was a digit of the axis lost?`
      : `Taken as ${threeDigits(value)}. Three digits show that none was lost.`,
  fixes: (site) => {
    const text = threeDigits(site.finding.data.value);
    return [replace(site, `Write ${text}`, text, false)];
  },
};

const threeDigits = (value: FindingData[string]): string => String(value).padStart(3, '0');
