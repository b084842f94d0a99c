import { isLess, roundTo } from '../../exact';
import { EYES, otherEye } from '../../model';
import { usePower } from '../../power-to-make';
import { amountInWords, powerInWords } from '../../words';
import { powersApart } from '../order/difference';
import type { Rule } from '../rule';

/** How far from a wished power a balance lens may be, dioptres, and how far from its fellow where none is wished. Ours. */
const MOST = { wish: 1, fellow: 4 } as const;

export const balanceFarOff: Rule = {
  code: 'balance-far-off',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A balance lens was measured more than a dioptre from the power wished for it, or more than four dioptres from its fellow where none is wished.',
    why: 'The power of a balance lens is not owed, but it is there to look and weigh like the other lens. One that is dioptres away is another lens.',
    example: { wrong: 'L +4.75 DS', right: 'L -4.25 DS' },
    source:
      'Daily Optician, “balance is good”: the balance lens matches the other in look and weight. The bounds are ours.',
  },
  message: ({ eye, read, wanted, of, apart }) =>
    `The balance lens ${eye} measures ${read}, ${amountInWords(Number(apart), 'D')} from ${of === 'wish' ? `the ${wanted} wished for it` : `its fellow of ${wanted}`}. Is it the right lens?`,
  needs: 'balance',
  check: ({ order: { lenses }, evaluation: { values } }, report) => {
    for (const eye of EYES) {
      const { role, balance } = lenses[eye];
      const read = values.power[eye];
      if (role !== 'balance' || !read) continue;
      const wish = balance?.power?.value ?? null;
      const wanted = wish ?? usePower(lenses[otherEye(eye)])?.power ?? null;
      const apart = wanted && powersApart(read.value, wanted);
      const of = wish ? 'wish' : 'fellow';
      if (!wanted || apart === null || !isLess(MOST[of], apart)) continue;
      const data = { eye, read: powerInWords(read.value), wanted: powerInWords(wanted), of, apart: roundTo(apart, 2) };
      report(read.place, data, { eye });
    }
  },
};
