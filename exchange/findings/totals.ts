import type { BlockAnalysis } from '../../orders';
import type { TotalsJson } from './shape';

export type Totals = { -readonly [K in keyof TotalsJson]: TotalsJson[K] };

export const noTotals = (): Totals => ({
  files: 0,
  orders: 0,
  accept: 0,
  reject: 0,
  incomplete: 0,
  unread: 0,
  errors: 0,
  warnings: 0,
});

/** Counts a block in. */
export function count(totals: Totals, { evaluation, findings }: BlockAnalysis): void {
  if (evaluation) {
    totals.orders++;
    totals[evaluation.verdict]++;
  }
  for (const { level } of findings) {
    if (level === 'error') totals.errors++;
    else if (level === 'warning') totals.warnings++;
  }
}

/** Counts in what was counted elsewhere. */
export function addTotals(totals: Totals, more: Totals): void {
  for (const what of Object.keys(totals) as (keyof Totals)[]) totals[what] += more[what];
}
