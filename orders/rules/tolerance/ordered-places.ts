import type { Place } from '../../finding';
import type { Measure } from '../../measures/measure';
import { type Distances, EYES, type Order, type OrderedLens, type Placed } from '../../model';

/** Where the order asks for what a measure was held against: of the lens, or of both where it belongs to the pair. */
export function orderedPlaces(order: Order, { quantity, eye }: Measure): readonly Place[] {
  const lenses = (eye ? [eye] : EYES).map((side) => order.lenses[side]);
  return present(lenses.flatMap((lens) => ofLens(lens, order, quantity)));
}

function ofLens(lens: OrderedLens, order: Order, quantity: Measure['quantity']): readonly (Placed<unknown> | null)[] {
  const { verification, thickness } = lens;
  switch (quantity) {
    case 'power':
      return verification ? [verification.power] : [lens.written, ...(isForNear(lens) ? [lens.add] : [])];
    case 'cylinder':
    case 'axis':
      return [verification?.power ?? lens.written];
    case 'add':
      return [verification?.add ?? lens.add];
    case 'upper-add':
      return [lens.upperAdd];
    case 'upper-height':
      return [lens.upperHeight ?? lens.height];
    case 'intermediate':
      return [lens.intermediate ?? lens.design];
    case 'degression':
      return [lens.design];
    case 'prism':
      return [verification?.prism ?? lens.prism];
    case 'prism-horizontal':
      return [verification?.prism ?? lens.prism, ...distances(order.pd, lens)];
    case 'prism-vertical':
      return [verification?.prism ?? lens.prism, lens.height];
    case 'pd':
      return distances(order.pd, lens);
    case 'near-pd':
      return distances(order.nearPd, lens);
    case 'height':
    case 'height-difference':
      return [lens.height];
    case 'segment-width':
    case 'segment-width-difference':
    case 'segment-tilt':
      return [lens.design];
    case 'slab':
      return [lens.slab];
    case 'base-curve':
      return [lens.baseCurve];
    case 'centre-thickness':
      return [thickness.centre];
    case 'edge-thickness':
      return [thickness.edge];
    case 'min-thickness':
      return [thickness.min];
    default:
      return [];
  }
}

const isForNear = ({ design }: OrderedLens): boolean =>
  design?.value.type === 'single-vision' && design.value.use === 'near';

const distances = (pd: Distances, { eye }: OrderedLens): readonly (Placed<number> | null)[] => [pd.binocular, pd[eye]];

/** The places that exist, each once: one line may be the source of both lenses. */
function present(values: readonly (Placed<unknown> | null)[]): readonly Place[] {
  const places = new Map<string, Place>();
  for (const value of values) {
    if (value) places.set(`${value.place.line}.${value.place.start}`, value.place);
  }
  return [...places.values()];
}
