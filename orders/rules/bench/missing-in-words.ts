import type { Eye } from '../../../grammar';
import type { Measure, Quantity } from '../../measures/measure';
import { quantityInWords } from '../../words';

/** One quantity that is missing, and for which lenses; no eye for what belongs to the pair. */
export interface Missing {
  readonly quantity: Quantity;
  readonly eyes: readonly Eye[];
}

/** What was called for and not read, each quantity once. A missing power brings its cylinder and axis with it. */
export function missingOf(measures: readonly Measure[]): readonly Missing[] {
  const missing = new Map<Quantity, Set<Eye>>();
  for (const { outcome, quantity, eye } of measures) {
    if (outcome !== 'not-read') continue;
    const eyes = missing.get(quantity) ?? new Set();
    if (eye) eyes.add(eye);
    missing.set(quantity, eyes);
  }
  const withoutPower = missing.get('power');
  for (const part of ['cylinder', 'axis'] as const) {
    const eyes = missing.get(part);
    if (!eyes || !withoutPower) continue;
    for (const eye of withoutPower) eyes.delete(eye);
    if (eyes.size === 0) missing.delete(part);
  }
  return [...missing].map(([quantity, eyes]) => ({ quantity, eyes: [...eyes] }));
}

/** `L power, add of both lenses, PD, the vertical place of the centres (prism, heights or optical centres)`. */
export const missingInWords = (missing: readonly Missing[]): string => missing.map(oneInWords).join(', ');

function oneInWords({ quantity, eyes }: Missing): string {
  const words = PLACING[quantity] ?? quantityInWords(quantity);
  if (eyes.length === 0) return words;
  return eyes.length === 2 ? `${words} of both lenses` : `${eyes[0]} ${words}`;
}

/** Placing can be read in several ways, and any of them will do. */
const PLACING: Readonly<Partial<Record<Quantity, string>>> = {
  'prism-horizontal': 'the horizontal place of the centres (PD, optical centres or prism)',
  'prism-vertical': 'the vertical place of the centres (prism, heights or optical centres)',
};
