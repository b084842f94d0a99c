import type { ToleranceSet } from '../../../tables';
import { isInBand } from '../../band';
import { isLess } from '../../exact';
import type { FindingData } from '../../finding';
import type { HouseLimit, HouseSet } from '../../house';
import type { Unit } from '../../limits';
import { parentLimits, turningPoints } from '../../parent-limits';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';

export const houseLooser: Rule = {
  code: 'house-looser',
  family: 'tolerance',
  level: 'warning',
  page: {
    checks: 'A limit of a house set is wider than that of the set it is built on, for some lens it holds for.',
    why: 'The published set decides in any case, so the wider limit never lets a lens pass. Somebody may believe it does.',
    example: { wrong: 'power 0.25', right: 'power 0.06' },
    source: 'Common practice, no source. The figures are those of the set named after “from”.',
  },
  message: ({ word, amount, of, unit, set, row }) =>
    `${amountInWords(Number(amount), unit as Unit)} for ${word} is wider than ${amountInWords(Number(of), unit as Unit)} of ${set} (${row}). The narrower limit decides.`,
};

/** What is told of each limit of a house set that is wider somewhere than that of its parent, once a line. */
export function looserLimits(
  house: HouseSet,
  set: ToleranceSet,
): readonly { readonly limit: HouseLimit; readonly data: FindingData }[] {
  return house.limits.flatMap((limit) => {
    const data = firstWider(limit, house, set);
    return data ? [{ limit, data: { word: limit.word, set: set.id, amount: limit.amount, ...data } }] : [];
  });
}

/** Limits change only at the ends of bands, so the ends of both sets and a hair above each are all there is to look at. */
function firstWider(limit: HouseLimit, house: HouseSet, set: ToleranceSet): FindingData | null {
  for (const at of turningPoints(set, limit.word, house)) {
    // The first line whose band holds the figure is the one that counts.
    const holding = house.limits.find(({ word, band }) => word === limit.word && (!band || isInBand(at, band)));
    if (holding !== limit) continue;
    const wider = parentLimits(set, limit.word, at).find(({ amount }) => isLess(amount, limit.amount));
    if (wider) return { of: wider.amount, unit: wider.unit, row: wider.row };
  }
  return null;
}
