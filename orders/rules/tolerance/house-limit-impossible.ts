import type { HouseLimit, HouseSet } from '../../house';
import type { Rule } from '../rule';

export const houseLimitImpossible: Rule = {
  code: 'house-limit-impossible',
  family: 'tolerance',
  level: 'error',
  page: {
    checks:
      'A limit of a house set is nothing or less, or wider than any lens could be off: 5.00 D, 90°, 10 prism dioptres or 20 mm. It is told at the limit, and at every order that is judged by the set.',
    why: 'No lens is made to a limit of nothing, and none fails one of 500. What the house meant is not known, so no pair is accepted by it until the figure is right.',
    example: { wrong: '  power 0', right: '  power 0.10' },
    source: 'Common practice, no source. The bounds are ours, many times as wide as any printed limit.',
  },
  message: ({ word, amount, set }) =>
    set
      ? `The house set ${set} has a limit of ${amount} for ${word}, which cannot be meant. Nothing is accepted by it.`
      : `A limit of ${amount} for ${word} cannot be meant. Write the amount a reading may be off.`,
  needs: 'house',
  check: ({ order, evaluation: { house } }, report) => {
    const [first] = house ? impossibleLimits(house) : [];
    if (!house || !first || order.readings.length === 0) return;
    report(order.standard?.place ?? order.place, { word: first.word, amount: first.amount, set: house.name });
  },
};

/** The widest amount that could be meant, by the word of the line; millimetres for every word that is not here. */
const MOST: Readonly<Record<string, number>> = {
  power: 5,
  cylinder: 5,
  add: 5,
  'base-curve': 5,
  axis: 90,
  prism: 10,
};
const MILLIMETRES = 20;

/** The limits of a house set that nobody can mean. */
export const impossibleLimits = ({ limits }: HouseSet): readonly HouseLimit[] =>
  limits.filter(({ word, amount, band }) => {
    const ends = [band?.atMost ?? 0, band?.above ?? 0];
    return amount <= 0 || amount > (MOST[word] ?? MILLIMETRES) || ends.some((end) => end < 0);
  });
