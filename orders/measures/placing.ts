/**
 * How the pair is placed before the eyes: the unwanted prism it makes, in millimetres or in prism dioptres as the
 * tolerance set asks. Each lens makes its own prism with its own power, from its own ordered place; by which word it was
 * read makes no difference. One displaced centre is one measure, with the other unit beside it.
 */
import type { Eye } from '../../grammar';
import { powerAt } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { pairLimit } from '../limits';
import { EYES, type Order } from '../model';
import { placingPd } from '../placing-pd';
import { powerToMake } from '../power-to-make';
import { type Case, classOfPair, type Measure, notRead, type Subject } from './measure';
import { acrossAsRead, heightsAsRead, orderedDistance } from './places';
import { monocularErrors, pairFound, prismOfEach } from './placing-found';
import { type Ruling, sharesOfEach, worst } from './placing-judged';
import { orderedPrism } from './wanted-prism';

export function placingMeasures(one: Case): Measure[] {
  const { order } = one;
  // One lens alone has no place, and an eye with a balance lens does not work with the other one.
  if (order.supply !== 'glazed' || !EYES.every((eye) => worksWithOther(order.lenses[eye]))) return [];
  const [along, across] = [strongestAlong(order, 180), strongestAlong(order, 90)];
  return along === null || across === null ? [] : [...horizontal(one, along), ...vertical(one, across)];
}

const worksWithOther = ({ role }: Order['lenses']['R']): boolean => role === 'made' || role === 'kept';

/** The larger absolute power of the pair along a direction, by which a set chooses the row of its limit. */
function strongestAlong(order: Order, meridian: number): number | null {
  let strongest: number | null = null;
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    const target = powerToMake(order, lens);
    const power = target?.kind === 'known' ? target.power : (lens.kept?.power?.value ?? null);
    const along = power && attempt(() => Math.abs(powerAt(power, meridian)));
    // The limit hangs on the stronger lens, and either may be the one whose power is not known.
    if (along === null) return null;
    strongest = Math.max(strongest ?? 0, along);
  }
  return strongest === null ? null : tidy(strongest);
}

/** Whether a set judges the horizontal place of a pair by its prism, and not in millimetres. */
export function isJudgedByPrism(order: Order, set: Case['set']): boolean {
  const power = strongestAlong(order, 180);
  if (power === null) return false;
  return pairLimit(set, classOfPair(order), 'horizontal', power, largestOrdered(order, 'right'))?.unit === 'prism';
}

function horizontal(one: Case, power: number): Measure[] {
  const { order, values, set, guard } = one;
  const limit = pairLimit(set, classOfPair(order), 'horizontal', power, largestOrdered(order, 'right'));
  if (!limit) return [];
  const ruling: Ruling = { one, power, limit, guard, component: 'horizontal' };
  const missing: Subject = { quantity: limit.unit === 'mm' ? 'pd' : 'prism-horizontal', eye: null, unit: limit.unit };
  if (limit.judged === 'monocular-pd') return eachPlaced(one, ruling, missing);
  const found = pairFound(one, 'horizontal', limit.unit, acrossAsRead(order, values));
  if (found.length === 0) return [notRead(missing, limit.unit === 'mm' ? orderedDistance(order) : 0)];
  return [...worst(found, ruling, 'prism-horizontal', 'pd'), ...sharesOfEach(one, ruling, 'prism-horizontal')];
}

/** Where each lens is to stand before its own eye, so is its prism judged by itself. */
function eachPlaced(one: Case, ruling: Ruling, missing: Subject): Measure[] {
  const { order, values } = one;
  const found = [...monocularErrors(order, values), ...prismOfEach(order, values)];
  if (found.length === 0) return [notRead(missing, orderedDistance(order))];
  const measures = worst(found, ruling, 'prism-horizontal', 'pd');
  const isCovered = (eye: Eye): boolean => measures.some((measure) => measure.eye === null || measure.eye === eye);
  const without = EYES.filter((eye) => !isCovered(eye));
  return [...measures, ...without.map((eye) => notRead({ ...missing, eye }, placingPd(order).of[eye]?.value ?? null))];
}

function vertical(one: Case, power: number): Measure[] {
  const { order, values, set, guard } = one;
  const limit = pairLimit(set, classOfPair(order), 'vertical', power, largestOrdered(order, 'up'));
  if (!limit) return [];
  const ruling: Ruling = { one, power, limit, guard, component: 'vertical' };
  const found = pairFound(one, 'vertical', limit.unit, heightsAsRead(order, values));
  if (found.length === 0) return [notRead({ quantity: 'prism-vertical', eye: null, unit: 'prism' }, 0)];
  return [
    ...worst(found, ruling, 'prism-vertical', 'height-difference'),
    ...sharesOfEach(one, ruling, 'prism-vertical'),
  ];
}

const largestOrdered = (order: Order, part: 'right' | 'up'): number =>
  Math.max(Math.abs(orderedPrism(order, 'R')[part]), Math.abs(orderedPrism(order, 'L')[part]));
