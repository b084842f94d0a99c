/** Where on a lens a figure was taken, and what it is a value of there. */
import type { AddReading, Measurement } from './model';

type Quantity = Measurement['quantity'];

/** Places at which a quantity is what the order speaks of; where none is said, the usual one is meant. */
const COUNTING: Readonly<Partial<Record<Quantity, Readonly<Record<string, string>>>>> = {
  power: {
    'distance-point': 'power',
    'prism-point': 'power',
    'near-point': 'nearPower',
    top: 'topPower',
  },
  prism: { 'prism-point': 'prism', 'distance-point': 'prismElsewhere', 'fitting-cross': 'prismElsewhere' },
  intermediate: { 'near-point': 'intermediate' },
  pd: { 'distance-point': 'pd', 'prism-point': 'pd', 'fitting-cross': 'pd' },
  'near-pd': { 'near-point': 'near-pd' },
  'optical-centres': { 'distance-point': 'optical-centres', 'prism-point': 'optical-centres' },
  height: {
    'distance-point': 'height',
    'prism-point': 'height',
    'fitting-cross': 'height',
    'upper-segment': 'upper-height',
  },
  'base-curve': { 'distance-point': 'base-curve', 'prism-point': 'base-curve' },
  'centre-thickness': { 'distance-point': 'centre-thickness', 'prism-point': 'centre-thickness' },
  'edge-thickness': { edge: 'edge-thickness', periphery: 'edge-thickness' },
  'min-thickness': { edge: 'min-thickness', periphery: 'min-thickness' },
  'segment-width': { 'near-point': 'segment-width' },
  'segment-tilt': { 'near-point': 'segment-tilt' },
  impact: {},
  cosmetic: {},
  marking: {},
};

const ELSEWHERE = 'elsewhere ';

/**
 * What a measurement is a value of. The same quantity at another point of the lens is another one; at the edge, in the
 * periphery, or at a place that is not known, it is kept and counts for nothing (`isElsewhere`).
 */
export function slotOf(one: Measurement): string {
  const { at, quantity } = one;
  if (quantity === 'add') {
    const usual = addSlotOf(one.value);
    if (at === null || at === 'near-point') return usual;
    return at === 'upper-segment' ? 'upperAdd' : `${ELSEWHERE}${quantity} ${at}`;
  }
  if (at === null) return quantity;
  return COUNTING[quantity]?.[at] ?? `${ELSEWHERE}${quantity} ${at}`;
}

/** Two tools on one add are a cross-check and no repetition; what the lens says of itself is neither. */
function addSlotOf(value: AddReading): 'add' | 'clockAdd' | 'engravedAdd' {
  if (value.kind === 'clock') return 'clockAdd';
  return value.kind === 'value' && value.engraved ? 'engravedAdd' : 'add';
}

export const isElsewhere = (slot: string): boolean => slot.startsWith(ELSEWHERE);
