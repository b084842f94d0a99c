import { type Rule, replace } from '../rule';

export const polarisedShare: Rule = {
  code: 'polarised-share',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'A polarising filter has a share in per cent where its direction belongs.',
    why: 'What counts on a polarising filter is the direction of its axis, usually 180. A share says how dark the tint is, which has its own words. The figure is not taken.',
    example: { wrong: 'tint brown polarised 80%', right: 'tint brown absorbs 80 polarised 180' },
    fix: 'Writes the share as what the tint absorbs, and the usual direction.',
    source: 'Common practice, no source.',
  },
  message: ({ value }) =>
    `${value} % is a share and no direction. Write the direction in degrees, and the share behind absorbs or transmits.`,
  fixes: (site) => [
    replace(
      site,
      `It absorbs ${site.finding.data.value} %, direction 180`,
      `180 absorbs ${site.finding.data.value}`,
      false,
    ),
  ],
};
