/** Which of the ordered distances the optical centres of a pair are placed by. */
import { type Distances, EYES, type Order, type OrderedLens } from './model';

/** Millimetres, and whether they are the ones for near. */
export interface PlacingPd {
  readonly of: Distances;
  readonly isNear: boolean;
}

/**
 * The distance PD, except for single vision made for near in every lens of the order: such a pair is looked through at
 * its centres when reading, so the near PD places it wherever one is ordered. Common practice, no source.
 */
export function placingPd({ lenses, pd, nearPd }: Order): PlacingPd {
  const isOrdered = nearPd.binocular !== null || (nearPd.R !== null && nearPd.L !== null);
  const worn = EYES.map((eye) => lenses[eye]).filter(({ role }) => role === 'made' || role === 'balance');
  return isOrdered && worn.length > 0 && worn.every(isForReading)
    ? { of: nearPd, isNear: true }
    : { of: pd, isNear: false };
}

const isForReading = ({ design }: OrderedLens): boolean =>
  design?.value.type === 'single-vision' && design.value.use === 'near';
