/** How far a reading may be off because of the instrument alone, and what that does near a limit. */
import { isLess } from './exact';
import { indicationLimit, prismIndicationLimit } from './focimeter-limits';
import type { Unit } from './limits';
import type { Instrument } from './model';

/**
 * What to do with a reading so near its limit that the instrument cannot tell on which side it lies. The general guidance
 * on such decisions is JCGM 106 (title from memory, text not seen).
 * - `simple`, simple acceptance: the limit decides as printed.
 * - `accept-when-sure`, guarded acceptance: only what is inside by more than the uncertainty is accepted.
 * - `reject-when-sure`, guarded rejection: only what is outside by more than the uncertainty is rejected.
 *
 * With an uncertainty as large as the limit, neither rule lets the other side of it count: what lies inside is not judged
 * by guarded acceptance, and what lies outside is never accepted by guarded rejection.
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

/**
 * Whether an instrument can tell that something lies within a limit at all. One whose uncertainty is as large as the
 * limit leaves no figure that would be accepted when sure, not even the ordered one.
 */
export const canTell = (limit: number, uncertainty: number): boolean => isLess(uncertainty, limit);

/** The limit that a guard band leaves; zero or less where the instrument cannot tell. */
export function guarded(limit: number, uncertainty: number, guard: GuardBand): number {
  if (guard === 'simple') return limit;
  return guard === 'accept-when-sure' ? limit - uncertainty : limit + uncertainty;
}
