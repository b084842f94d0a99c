/** One lens of an order, and what the figures ask about it first: its power, its add, its material, its kind. */

import type { Eye } from '../../grammar';
import { minusForm, type Power } from '../../optics';
import { materials } from '../../tables';
import { attemptOf } from '../attempt';
import { isOffice, isSingleVision } from '../lens-kinds';
import type { LensMaterial, Order, OrderedLens, PerEye } from '../model';
import { powerToMake } from '../power-to-make';
import { amount, dioptres, type Known, listed, ordered, type WorkedUnit, worked } from './figure';

export interface Case {
  readonly order: Order;
  readonly lens: OrderedLens;
  readonly eye: Eye;
  /** What `once` has worked out, by the function that worked it out. */
  readonly known: Map<unknown, unknown>;
}

/**
 * The lenses of the order that was asked for last. Whoever asks for many figures asks for those of one order after the
 * other; a weak map of all orders would carry each of them through the garbage collector.
 */
let latest: { readonly order: Order; readonly cases: PerEye<Case> } | null = null;

/** Both lenses of an order, the same ones for as long as no other order is asked for, so that little is worked out twice. */
export function casesOf(order: Order): PerEye<Case> {
  if (latest?.order === order) return latest.cases;
  const caseOf = (eye: Eye): Case => ({ order, lens: order.lenses[eye], eye, known: new Map() });
  const cases = { R: caseOf('R'), L: caseOf('L') };
  latest = { order, cases };
  return cases;
}

/** Works out for a lens what many figures rest on when it is first asked for, and then keeps it. */
export function once<V extends object | null>(of: (one: Case) => V): (one: Case) => V {
  return (one) => {
    let found = one.known.get(of) as V | undefined;
    if (found === undefined) {
      found = of(one);
      one.known.set(of, found);
    }
    return found;
  };
}

/** The power of the lens in the frame, in minus form: to be made, of the kept lens, or wished for a balance lens. */
export const powerOf = once(({ order, lens }): Known<Power> | null => {
  const inFrame = powerInFrame(order, lens);
  const power = inFrame && attemptOf(minusForm, inFrame.power);
  return power && known(power, { power: inFrame.isTyped ? ordered(dioptres(power)) : worked(dioptres(power)) });
});

/** The same as it was written or worked out, and which of the two. */
export function powerInFrame(
  order: Order,
  lens: OrderedLens,
): { readonly power: Power; readonly isTyped: boolean } | null {
  if (lens.role === 'kept' || lens.role === 'balance') {
    const stated = lens.role === 'kept' ? lens.kept?.power : lens.balance?.power;
    return stated ? { power: stated.value, isTyped: true } : null;
  }
  const target = powerToMake(order, lens);
  if (target?.kind !== 'known') return null;
  return { power: target.power, isTyped: target.from === 'written' || target.from === 'verification' };
}

/** The add that the lens is to read, dioptres; a lens for one distance and one made to its near point have none. */
export const addOf = once(({ lens }): Known<number> | null => {
  const add = addInLens(lens);
  return add === null ? null : known(add, { add: ordered(dioptres(add)) });
});

export function addInLens(lens: OrderedLens): number | null {
  const add = lens.role === 'kept' ? lens.kept?.add : (lens.verification?.add ?? lens.add);
  return add && !isSingleVision(lens) && !isOffice(lens) ? add.value : null;
}

export const indexOf = once(({ lens }) => constant(lens.material?.value, 'index', 'index', null));
export const abbeOf = ({ lens }: Case): Known<number> | null =>
  constant(lens.material?.value, 'abbe', 'Abbe number', null);
export const densityOf = ({ lens }: Case): Known<number> | null =>
  constant(lens.material?.value, 'density', 'density', 'g/cm3');

const COLUMN = { index: 'indexD', abbe: 'abbe', density: 'density' } as const;

/** A constant of the material, and whether the order or the table says it. */
function constant(
  material: LensMaterial | undefined,
  which: keyof typeof COLUMN,
  name: string,
  unit: WorkedUnit,
): Known<number> | null {
  const value = material?.[which];
  if (value == null) return null;
  const inTable = materials.find(({ id }) => id === material?.known)?.[COLUMN[which]].value;
  const input = amount(value, unit);
  return known(value, { [name]: value === inTable ? listed(input) : ordered(input) });
}

export const known = <V>(value: V, inputs: Known<V>['inputs'], assumed: readonly string[] = []): Known<V> => ({
  value,
  inputs,
  assumed,
});
