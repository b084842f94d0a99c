import { type Rule, replace } from '../rule';

export const prismMark: Rule = {
  code: 'prism-mark',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A prism amount carries a mark such as Δ or ^.',
    why: 'The word before the figure already says that it is a prism, and the mark is read as a figure when it is copied by hand.',
    example: { wrong: 'prism R 2.00Δ BI', right: 'prism R 2.00 BI' },
    fix: 'Takes the mark off.',
    source: 'Optician page on reading a prescription (frameworkseyewear.net): prism written as 1^.',
  },
  message: () => 'The mark is not needed; the amount is read without it.',
  fixes: (site) => [replace(site, 'Take the mark off', '', true)],
};
