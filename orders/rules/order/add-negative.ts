import { signed } from '../../words';
import { type Rule, replace, typed } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const addNegative: Rule = {
  code: 'add-negative',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The ordered add is below zero.',
    why: 'An add is always plus. The stroke was meant to part the word from the figure, and taken literally it would turn a near power of +3.50 into -0.50.',
    example: { wrong: 'add -2.00', right: 'add +2.00' },
    fix: 'Writes plus.',
    source: 'An order as posted in an opticians’ forum, “calculation for a compensated lens”.',
  },
  message: ({ add }) => `The add is ${signed(Number(add))}; an add is plus.`,
  fixes: (site) => [replace(site, 'Write plus', typed(site).replace(SIGN, '+'), false)],
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) =>
        lens.add && lens.add.value < 0 ? [{ lens, place: lens.add.place, data: { add: lens.add.value } }] : [],
      ),
    );
  },
};

const SIGN = /^[^\d.,]+/;
