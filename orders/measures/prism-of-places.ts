/** The prism that each lens makes of the place it stands in, and the place that a prism comes of. Prentice’s rule. */
import type { Eye } from '../../grammar';
import {
  type Displacement,
  decentrationForPrism,
  type Power,
  type PrismVector,
  prentice,
  principalMeridians,
} from '../../optics';
import { attempt } from '../attempt';
import { EYES, type Order, type OrderedLens, type PerEye } from '../model';
import type { ReadValues } from '../reduce';
import type { Along } from './places';
import { powerAtReference, powerRead } from './power';
import { orderedPrism } from './wanted-prism';

/** The power that makes prism of a displacement: the one read, since it is that of the lens in the frame, else the ordered one. */
export function powerInPlace(order: Order, values: ReadValues, lens: OrderedLens): Power | null {
  const read = powerRead(values, lens)?.value;
  if (read) return read;
  const ordered = powerAtReference(order, lens);
  return ordered === 'unstated' ? null : (ordered ?? lens.kept?.power?.value ?? null);
}

/** How far a lens stands from its place in the examiner’s frame, from millimetres outwards and upwards. */
export const inFrame = (eye: Eye, out: number, up: number): Displacement => ({
  right: (eye === 'R' ? -out : out) + 0,
  up,
});

/**
 * Unwanted prism of both lenses for every way in which the pair may stand by what was read, prism dioptres. A direction of
 * which nothing is known counts as being in place. Null where a power is not known.
 */
export function prismsOfPlaces(
  order: Order,
  values: ReadValues,
  across: Along | null,
  upwards: Along | null,
): readonly PerEye<PrismVector>[] | null {
  const prisms: PerEye<PrismVector>[] = [];
  for (const out of across?.ways ?? IN_PLACE) {
    for (const up of upwards?.ways ?? IN_PLACE) {
      const made = prismsAt(order, values, out, up, across?.ofCentres ?? false);
      if (!made) return null;
      prisms.push(made);
    }
  }
  return prisms;
}

const IN_PLACE: Along['ways'] = [{ R: 0, L: 0 }];

/** @param ofCentres the places are those of optical centres, so the ordered prism across is in what they make */
export function prismsAt(
  order: Order,
  values: ReadValues,
  out: PerEye<number>,
  up: PerEye<number>,
  ofCentres: boolean,
): PerEye<PrismVector> | null {
  const [R, L] = EYES.map((eye) => {
    const lens = order.lenses[eye];
    const power = powerInPlace(order, values, lens);
    return (
      power &&
      attempt(() => {
        const { right, up: high } = inFrame(eye, out[eye], up[eye]);
        // The bare centre stands beside the point with the ordered prism, across by its own share of what both parts ask.
        const beside = ofCentres ? decentrationForPrism(power, orderedPrism(order, eye)).right : 0;
        return prentice(power, { right: right - beside, up: high });
      })
    );
  });
  return R && L ? { R, L } : null;
}

/**
 * The place a prism comes of: how far the lens stands from where it should, millimetres in the examiner’s frame, and the
 * prism that no place explains. Below half a dioptre no centre can be found: there one eighth of a prism dioptre, the
 * finest a target is read to, is 2.5 mm and more. Common practice, no source.
 */
export function placeOfPrism(
  power: Power,
  prism: PrismVector,
): { readonly moved: Displacement; readonly rest: PrismVector } {
  let rest = prism;
  let found: PrismVector = { right: 0, up: 0 };
  for (const { meridian, power: along } of principalMeridians(power)) {
    if (Math.abs(along) >= LEAST_POWER) continue;
    const angle = (meridian * Math.PI) / 180;
    const size = rest.right * Math.cos(angle) + rest.up * Math.sin(angle);
    rest = { right: rest.right - size * Math.cos(angle), up: rest.up - size * Math.sin(angle) };
    found = { right: found.right + size * Math.cos(angle), up: found.up + size * Math.sin(angle) };
  }
  const moved = attempt(() => decentrationForPrism(power, rest));
  return moved ? { moved, rest: found } : { moved: { right: 0, up: 0 }, rest: prism };
}

const LEAST_POWER = 0.5;
