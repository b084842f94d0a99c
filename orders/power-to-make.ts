/** Which power a lens is to be made to, and what a focimeter should show on it. */
import { nearPower, nearPowerForVertex, type Power, powerForVertex } from '../optics';
import { attempt } from './attempt';
import { WORKING_DISTANCE } from './computed/assumptions';
import type { Order, OrderedLens } from './model';

/** A power to be made with what it rests on; `unstated` where only the maker knows it. */
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
  return byUse && order.compensation?.value === 'vertex' ? forVertex(order, lens, byUse) : byUse;
}

/** Converted from the vertex distance of the refraction to that of wear; as written where one of the two is missing. */
function forVertex(order: Order, lens: OrderedLens, byUse: PowerByUse): PowerToMake {
  const power = carriedToWear(order, lens, byUse);
  return power ? { kind: 'known', power, from: 'vertex' } : byUse;
}

/**
 * A power by use as it has to be at the vertex distance of wear, dioptres, in the form it was written: for a far object,
 * or for one at the working distance of a lens made for near or an intermediate distance. Null where one of the two
 * vertex distances is missing, and where the lens is too strong to be carried there.
 */
export function carriedToWear({ tested, asWorn }: Order, lens: OrderedLens, byUse: PowerByUse): Power | null {
  const worn = asWorn.vertex;
  if (!tested || !worn) return null;
  const away = objectDistance(lens, byUse);
  return attempt(() =>
    away
      ? nearPowerForVertex(byUse.power, tested.value, worn.value, away.mm)
      : powerForVertex(byUse.power, tested.value, worn.value),
  );
}

/**
 * How far before the cornea the object of a lens for near or an intermediate distance lies, millimetres; null for a lens
 * that looks far. Said by the order, else where the intermediate addition alone is sharp, else the usual distance.
 */
export function objectDistance(
  { design, intermediate }: OrderedLens,
  { from }: PowerByUse,
): { readonly mm: number; readonly origin: 'ordered' | 'worked' | 'assumed' } | null {
  if (from !== 'near' && from !== 'intermediate') return null;
  const cm = design?.value.working;
  if (cm) return { mm: cm * 10, origin: 'ordered' };
  const addition = design?.value.intermediate ?? intermediate?.value ?? 0;
  if (from === 'intermediate' && addition > 0) return { mm: 1000 / addition, origin: 'worked' };
  return { mm: WORKING_DISTANCE, origin: 'assumed' };
}

export type PowerByUse = Extract<PowerToMake, { kind: 'known' }>;

/** The power by use alone, before any compensation. */
export function usePower(lens: OrderedLens): PowerByUse | null {
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
