import { toleranceSets } from '../../../tables';
import type { Rule } from '../rule';

export const standardScope: Rule = {
  code: 'standard-scope',
  family: 'bench',
  level: 'error',
  page: {
    checks:
      'The order is judged by a set that is not made for lenses supplied in this way: one for uncut lenses for a glazed pair, or one for mounted pairs for uncut lenses.',
    why: 'A set for uncut lenses has no limit for where the centres of a pair stand, so a pair centred at 50 mm for a PD of 63 passes it. What a set does not judge is never accepted by it.',
    example: { wrong: 'standard iso-8980-2017', right: 'standard iso-21987-2017' },
    source:
      'The scopes of ISO 8980-1:2017, uncut finished lenses, and of ISO 21987:2017, mounted lenses, as their abstracts state them.',
  },
  message: ({ set, scope, supply, sets }) => {
    const others = (sets as readonly string[]).join(' or ');
    const advice = others ? `Choose ${others}.` : 'No built-in set covers them.';
    return `The set ${set} is for ${(scope as readonly string[]).join(' or ')} lenses; these are ${supply}. ${advice}`;
  },
  check: ({ order, evaluation: { set } }, report) => {
    if (!set || order.readings.length === 0 || covers(set.scope, order.supply)) return;
    const sets = toleranceSets.filter(({ scope }) => covers(scope, order.supply)).map(({ id }) => id);
    report(order.standard?.place ?? order.place, { set: set.id, scope: set.scope, supply: order.supply, sets });
  },
};

const covers = (scope: readonly string[], supply: string): boolean => scope.includes(supply);
