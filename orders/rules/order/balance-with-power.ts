import type { Rule } from '../rule';
import { lensesOf } from './lenses';

export const balanceWithPower: Rule = {
  code: 'balance-with-power',
  family: 'order',
  level: 'error',
  page: {
    checks: 'An eye has a power line of its own and is a balance lens as well.',
    why: 'The power of a balance lens is not owed and not judged. Where it is wanted, the lens is no balance lens; where it is only a wish, it stands on the balance line.',
    example: { wrong: 'L -4.25 -1.00 x 168', right: 'balance L -4.25' },
    source: 'Daily Optician, “balance is good”; Vision Care Products, tech tips, balance lens.',
  },
  message: ({ eye }) =>
    `${eye} is a balance lens and has a power of its own. Which of the two is meant? A balance lens is not judged.`,
  needs: 'balance',
  check: ({ order }, report) => {
    for (const { eye, role, written } of lensesOf(order)) {
      if (role === 'balance' && written) report(written.place, { eye }, { eye });
    }
  },
};
