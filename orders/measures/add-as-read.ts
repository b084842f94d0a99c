/** Which of the adds read on one lens is judged. */
import type { Eye } from '../../grammar';
import type { Read, ReadValues } from '../reduce';

/**
 * The add that was measured, dioptres: by the focimeter, or by the lens measure where that was taken alone or in a later
 * reading. Null where none was; what the lens says of itself is no measurement.
 */
export function addAsRead({ add, clockAdd }: ReadValues, eye: Eye): Read<number> | null {
  const [drum, clock] = [add[eye], clockAdd[eye]];
  if (!drum || !clock) return drum ?? clock ?? null;
  return clock.reading > drum.reading ? clock : drum;
}
