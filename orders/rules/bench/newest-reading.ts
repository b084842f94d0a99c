import { isLater } from '../../evaluate';
import type { Order, Reading } from '../../model';

/**
 * The reading that speaks for the order as it is now: the latest by date and time, and of equals the one further down.
 * Only a final reading speaks for glazed spectacles; `final` is false where none has been taken yet.
 */
export function newestReading(order: Order): { readonly reading: Reading; readonly final: boolean } | null {
  const counting = order.readings.filter(({ stage }) => order.supply !== 'glazed' || stage === 'final');
  const reading = latest(counting.length > 0 ? counting : order.readings);
  return reading && { reading, final: counting.length > 0 };
}

const latest = (readings: readonly Reading[]): Reading | null =>
  readings.reduce<Reading | null>((best, one) => (best && isLater(best, one) ? best : one), null);
