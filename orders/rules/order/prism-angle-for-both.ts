import { type Rule, replace, typed } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const prismAngleForBoth: Rule = {
  code: 'prism-angle-for-both',
  family: 'order',
  level: 'error',
  page: {
    checks: 'One angle is given for the base of both lenses.',
    why: 'Angles are counted as the examiner sees them, so the same angle is base in before one eye and base out before the other. Whether both lenses turn the same way or mirror each other has to be said.',
    example: { wrong: 'prism both 2 base 180', right: 'prism R 2 base 180 L 2 base 180' },
    fix: 'Writes the angle for each eye: the same one, or mirrored.',
    source: 'Base notation of ISO 8429; the two eyes after Durham Technical Community College, OPH 142, module 01 A.',
  },
  message: () =>
    'The same angle for both eyes, or mirrored? In this scale base in is 0 before the right eye and 180 before the left.',
  fixes: (site) => {
    const { amount, base } = PARTS.exec(typed(site))?.groups ?? {};
    if (amount === undefined || base === undefined || Number(base) > 360) return [];
    const mirrored = String((540 - Number(base)) % 360).padStart(3, '0');
    return [
      replace(site, 'The same angle for both', `R ${amount} base ${base} L ${amount} base ${base}`, false),
      replace(site, 'Mirrored', `R ${amount} base ${base} L ${amount} base ${mirrored}`, false),
    ];
  },
  needs: 'prism',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) =>
        lens.prismUnclear?.value === 'angle-for-both' ? [{ lens, place: lens.prismUnclear.place }] : [],
      ),
    );
  },
};

/** One amount and one angle; several components are left to the writer. */
const PARTS = /^(?:[a-z/]+\s+)?(?<amount>[\d.]+)\s*(?:base|@)\s*(?<base>\d+)$/i;
