import { putBefore, type Rule } from '../rule';

export const tintUnclear: Rule = {
  code: 'tint-unclear',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A tint has a percentage that is said to be neither absorbed nor let through.',
    why: 'A tint that absorbs 80 per cent is a dark one, and one that lets 80 per cent through hardly shows.',
    example: { wrong: 'tint brown 80', right: 'tint brown absorbs 80' },
    fix: 'One fix for each meaning.',
    source: 'Common practice, no source.',
  },
  message: ({ value }) => `Does the tint absorb ${value} per cent, or let it through?`,
  fixes: (site) => [
    putBefore(site, `It absorbs ${site.finding.data.value} %`, 'absorbs ', false),
    putBefore(site, `It lets ${site.finding.data.value} % through`, 'transmits ', false),
  ],
};
