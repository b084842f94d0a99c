/** What a person’s decision covers. */
import type { Measure, Quantity } from '../measures/measure';
import type { Order } from '../model';

/** Failures of safety, which no acceptance covers. */
const SAFETY: readonly Quantity[] = ['impact', 'min-thickness'];
const THICKNESS: readonly Quantity[] = ['centre-thickness', 'edge-thickness', 'min-thickness'];

export const isNeverCovered = ({ purpose }: Order, { quantity }: Measure): boolean =>
  SAFETY.includes(quantity) || (purpose?.value === 'safety' && THICKNESS.includes(quantity));

/** A decision covers only what had been read by then. */
export function wasReadBefore({ decided, readings }: Order, { reading }: Measure): boolean {
  if (!decided || reading === null) return false;
  return reading <= readings.findLastIndex(({ place }) => place.line <= decided.place.line);
}

/**
 * Whether a person has decided on this failure. Accepting against a limit needs a reason; refusing or remaking answers it
 * in any case.
 */
export function isDecided(order: Order, measure: Measure): boolean {
  const { decided } = order;
  if (!decided || !wasReadBefore(order, measure)) return false;
  if (decided.verdict !== 'accept') return true;
  return decided.why !== null && !isNeverCovered(order, measure);
}
