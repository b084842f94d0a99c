import { atOddsWithPrism } from '../../measures/distance-and-prism';
import { acrossAsRead } from '../../measures/places';
import { isJudgedByPrism } from '../../measures/placing';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';

export const distanceContradicts: Rule = {
  code: 'distance-contradicts',
  family: 'bench',
  level: 'warning',
  bars: true,
  page: {
    checks:
      'The distance between the centres was read as a whole, and the prism of both lenses beside it says another distance: by their powers the centres would stand elsewhere. Where millimetres decide, the distance decides.',
    why: 'No prism at the ordered points means that the centres stand there. A distance that is several millimetres off beside it was read at other points, or the prism was. Read both again.',
    example: { wrong: 'pd 66.5\n    prism R 0 L 0', right: 'pd 63.5\n    prism R 0 L 0' },
    source:
      'Prentice’s rule: Jalie, The Indian Optician Nov–Dec 2024, pp. 139–140. That a distance is found to 1.5 mm and prism to an eighth is common practice, no source.',
  },
  message: ({ off, expected }) =>
    `The distance is ${amountInWords(Number(off), 'mm')} from the ordered one; by the prism beside it, it should be ${amountInWords(Number(expected), 'mm')} from it. One of the two is wrong: read both again.`,
  check: ({ order, evaluation: { set, values } }, report) => {
    if (!set || order.supply !== 'glazed' || !isJudgedByPrism(order, set)) return;
    const across = acrossAsRead(order, values);
    const expected = atOddsWithPrism(order, values, across);
    if (across && expected !== null) report(across.from.place, { off: across.error, expected });
  },
};
