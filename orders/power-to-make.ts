/** Which power a lens is to be made to, and what a focimeter should show on it. */
import { nearPower, type Power, powerForVertex } from '../optics';
import { attempt } from './attempt';
import type { Order, OrderedLens } from './model';

export type PowerToMake =
  | {
      readonly kind: 'known';
      readonly power: Power;
      readonly from: 'written' | 'near' | 'intermediate' | 'vertex' | 'verification';
    }
  /** The maker compensates and has not said what the lens will read. */
  | { readonly kind: 'unstated' };

/**
 * The power a finished lens is held against, in the form it was written: the written one, the near or intermediate
 * power of a single-vision lens ordered for that use, the near power of an office lens, converted for the vertex
 * distance where the order asks for it, or the maker's verification power where one is stated. Null where the order
 * gives no power, or an intermediate use without its addition.
 */
export function powerToMake(order: Order, lens: OrderedLens): PowerToMake | null {
  if (!lens.written) return null;
  if (lens.verification) return { kind: 'known', power: lens.verification.power.value, from: 'verification' };
  if (order.compensation?.value === 'by-maker') return { kind: 'unstated' };
  const byUse = usePower(lens);
  return byUse && order.compensation?.value === 'vertex' ? forVertex(order, byUse) : byUse;
}

/** Converted from the vertex distance of the refraction to that of wear; as written where one of the two is missing. */
function forVertex({ tested, asWorn }: Order, byUse: Extract<PowerToMake, { kind: 'known' }>): PowerToMake {
  const worn = asWorn.vertex;
  if (!tested || !worn) return byUse;
  const power = attempt(() => powerForVertex(byUse.power, tested.value, worn.value));
  return power ? { kind: 'known', power, from: 'vertex' } : byUse;
}

/** The power by use alone, before any compensation. */
export function usePower(lens: OrderedLens): Extract<PowerToMake, { kind: 'known' }> | null {
  if (!lens.written) return null;
  const written = lens.written.value;
  const design = lens.design?.value;
  // An office lens has no distance portion: it is made to, and read at, its near point.
  if (design?.type === 'office' && lens.add) {
    const near = attempt(() => nearPower(written, lens.add?.value ?? 0));
    return near && { kind: 'known', power: near, from: 'near' };
  }
  if (design?.type !== 'single-vision' || design.use === null || design.use === 'distance')
    return { kind: 'known', power: written, from: 'written' };
  const add = design.use === 'near' ? lens.add?.value : (design.intermediate ?? lens.intermediate?.value);
  if (add == null) return null;
  const power = attempt(() => nearPower(written, add));
  return power && { kind: 'known', power, from: design.use };
}
