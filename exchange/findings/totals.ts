import type { BlockAnalysis, Verdict } from '../../orders';
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

/** What one block adds to the totals. */
export interface Counted {
  readonly verdict: Verdict | null;
  readonly errors: number;
  readonly warnings: number;
}

export function counted({ evaluation, findings }: BlockAnalysis): Counted {
  let errors = 0;
  let warnings = 0;
  for (const { level } of findings) {
    if (level === 'error') errors++;
    else if (level === 'warning') warnings++;
  }
  return { verdict: evaluation?.verdict ?? null, errors, warnings };
}

export function count(totals: Totals, { verdict, errors, warnings }: Counted): void {
  if (verdict) {
    totals.orders++;
    totals[verdict]++;
  }
  totals.errors += errors;
  totals.warnings += warnings;
}
