/** How far a reading may be off because of the instrument alone, and what that does near a limit. */
import { isLess } from './exact';
import { indicationLimit, prismIndicationLimit } from './focimeter-limits';
import type { Unit } from './limits';
import type { Instrument } from './model';

/**
 * What to do with a reading so near its limit that the instrument cannot tell on which side it lies. The general guidance
 * on such decisions is JCGM 106 (title from memory, text not seen).
 * - `simple`: the limit decides as printed.
 * - `accept-when-sure`: only what is inside by more than the uncertainty is accepted.
 * - `reject-when-sure`: only what is outside by more than the uncertainty is rejected.
 */
export type GuardBand = 'simple' | 'accept-when-sure' | 'reject-when-sure';

export const GUARD_BANDS: readonly GuardBand[] = ['simple', 'accept-when-sure', 'reject-when-sure'];

/**
 * Uncertainty of a reading in its own unit: the one stated for the instrument, else the indication limit of ISO 8598:1996
 * at that power or prism. Null for lengths and angles, for which no limit was seen, and without a declared instrument.
 * @param read the reading, dioptres or prism dioptres
 */
export function uncertaintyOf(instrument: Instrument | null, unit: Unit | null, read: number): number | null {
  if (!instrument || (unit !== 'D' && unit !== 'prism')) return null;
  if (unit === 'D' && instrument.uncertainty !== null) return instrument.uncertainty;
  return (unit === 'D' ? indicationLimit(read) : prismIndicationLimit(read))?.limit ?? null;
}

/** Whether a deviation lies nearer to its limit than the instrument is sure of. */
export const isNear = (deviation: number, limit: number, uncertainty: number): boolean =>
  isLess(Math.abs(Math.abs(deviation) - limit), uncertainty);

/** The limit that a guard band leaves, never below zero. */
export function guarded(limit: number, uncertainty: number | null, guard: GuardBand): number {
  if (uncertainty === null || guard === 'simple') return limit;
  return guard === 'accept-when-sure' ? Math.max(0, limit - uncertainty) : limit + uncertainty;
}
