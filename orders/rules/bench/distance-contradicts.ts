import { powerAt } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import { classOfPair } from '../../measures/measure';
import { acrossAsRead, isOfEach } from '../../measures/places';
import { isJudgedByPrism } from '../../measures/placing';
import { placeOfPrism, powerInPlace } from '../../measures/prism-of-places';
import { prismRead, unwantedIn } from '../../measures/wanted-prism';
import { EYES } from '../../model';
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
    if (!across || isOfEach(across) || across.ofCentres || classOfPair(order) === 'progressive') return;
    let expected = 0;
    let most = DISTANCE;
    for (const eye of EYES) {
      const read = prismRead(order, values, eye);
      const power = powerInPlace(order, values, order.lenses[eye]);
      const along = power && attempt(() => Math.abs(powerAt(power, 180)));
      if (!read || !power || along === null || read.reading !== across.from.reading || isLess(along, LEAST_POWER))
        return;
      const { moved } = placeOfPrism(power, unwantedIn(read.value, order, eye));
      expected += eye === 'R' ? -moved.right : moved.right;
      most += (PRISM / along) * 10;
    }
    const off = across.error;
    if (isLess(most, Math.abs(off - expected))) report(across.from.place, { off, expected: tidy(expected) });
  },
};

/** Millimetres, prism dioptres, and dioptres below which no centre can be found. */
const DISTANCE = 1.5;
const PRISM = 0.125;
const LEAST_POWER = 0.5;
