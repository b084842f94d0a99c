import { type Rule, typed } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const prismBaseMissing: Rule = {
  code: 'prism-base-missing',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A prism is ordered or measured without saying where its base is.',
    why: 'The four directions do four different things, and the one that is usual for a wearer cannot be seen from the amount.',
    example: { wrong: 'prism R 2.00', right: 'prism R 2.00 BI' },
    fix: 'One fix for each direction; none is applied without being chosen.',
    source: 'A question page on base directions: a prism without a base cannot be made.',
  },
  message: () => 'Where is the base of this prism: in, out, up or down?',
  fixes: (site) => {
    if (!ONE_AMOUNT.test(typed(site))) return [];
    const { line, end } = site.finding;
    return BASES.map(([word, letters]) => ({
      title: `Base ${word}`,
      safe: false,
      edits: [{ line, start: end, end, text: ` ${letters}` }],
    }));
  },
  needs: 'prism',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) =>
        lens.prismUnclear?.value === 'base-missing' ? [{ lens, place: lens.prismUnclear.place }] : [],
      ),
    );
  },
};

const ONE_AMOUNT = /^(?:[a-z/]+\s+)?[\d.,/]+$/i;

const BASES = [
  ['in', 'BI'],
  ['out', 'BO'],
  ['up', 'BU'],
  ['down', 'BD'],
] as const;
