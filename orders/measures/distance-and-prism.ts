/** Whether a distance that was read as a whole belongs to the prism that was read beside it. */
import { powerAt } from '../../optics';
import { attempt } from '../attempt';
import { isLess, tidy } from '../exact';
import { EYES, type Order } from '../model';
import type { ReadValues } from '../reduce';
import { classOfPair } from './measure';
import { type Along, isOfEach } from './places';
import { placeOfPrism, powerInPlace } from './prism-of-places';
import { prismRead, unwantedIn } from './wanted-prism';

/** Millimetres, prism dioptres, and dioptres below which no centre can be found. Common practice, no source. */
const DISTANCE = 1.5;
const PRISM = 0.125;
const LEAST_POWER = 0.5;

/**
 * Millimetres by which the distance would be off by the prism of both lenses, where the one that was read is at odds with
 * that by more than both can be misread. Null where the two agree, and where one of them says nothing of the other.
 */
export function atOddsWithPrism(order: Order, values: ReadValues, across: Along | null): number | null {
  if (!across || isOfEach(across) || across.ofCentres || classOfPair(order) === 'progressive') return null;
  let expected = 0;
  let most = DISTANCE;
  for (const eye of EYES) {
    const read = prismRead(order, values, eye);
    const power = powerInPlace(order, values, order.lenses[eye]);
    const along = power && attempt(() => Math.abs(powerAt(power, 180)));
    if (!read || !power || along === null || isLess(along, LEAST_POWER)) return null;
    if (read.reading !== across.from.reading) return null;
    const { moved } = placeOfPrism(power, unwantedIn(read.value, order, eye));
    expected += eye === 'R' ? -moved.right : moved.right;
    most += (PRISM / along) * 10;
  }
  return isLess(most, Math.abs(across.error - expected)) ? tidy(expected) : null;
}
