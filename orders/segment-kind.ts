/** How a segment is made, as far as the order says it. */
import { materials } from '../tables';
import { isSegmented } from './lens-kinds';
import type { OrderedLens } from './model';

/** The surface that carries the segment can be felt only where the segment is ground or cast in one piece with the lens. */
export type SegmentKind = 'fused' | 'one-piece';

/**
 * Segments of glass are fused in, except the full-width one; those of resin are cast in one piece. Null for a lens
 * without a segment, and where the material is not known. From memory of Brooks & Borish, System for Ophthalmic Dispensing.
 */
export function segmentKindOf(lens: OrderedLens): SegmentKind | null {
  const family = materials.find(({ id }) => id === lens.material?.value.known)?.family;
  if (!family || !isSegmented(lens)) return null;
  return family === 'glass' && lens.design?.value.shape !== 'full-width' ? 'fused' : 'one-piece';
}
