import { type Rule, replace, typed } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const prismRelative: Rule = {
  code: 'prism-relative',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A prism is written with a sign, as a change of a prism that is there already.',
    why: 'The laboratory does not have the old pair. An order holds the whole prism; 2 base in on top of 2.05 in and 1.43 up is 4.29 in an oblique direction, which nobody adds up in passing.',
    example: { wrong: 'prism R +2 BI', right: 'prism R 2 BI' },
    fix: 'Takes the sign away: the figure is the whole prism.',
    source: 'Durham Technical Community College, OPH 142, module 01 E, resolving prism.',
  },
  message: () => 'Is this the whole prism, or a change of another one? The whole is needed.',
  fixes: (site) => [
    replace(site, 'It is the whole prism', typed(site).replaceAll(/[+−–-](?=\s*[\d.])\s*/g, ''), false),
  ],
  needs: 'prism',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) =>
        lens.prismUnclear?.value === 'relative' ? [{ lens, place: lens.prismUnclear.place }] : [],
      ),
    );
  },
};
