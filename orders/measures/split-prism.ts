/** How ordered prism is shared between the lenses: what each is to have, and whether each is judged by itself. */

import type { Eye } from '../../grammar';
import { type PrismVector, prismBeforeEye, prismInFrame } from '../../optics';
import { isSame, tidy } from '../exact';
import type { Order, PrismPart } from '../model';

const NONE: PrismVector = { right: 0, up: 0 };

/** The prism ordered for a lens as it is written, of a lens that stays in the frame what that one has. */
export function writtenPrism({ lenses }: Order, eye: Eye): PrismVector {
  const lens = lenses[eye];
  return (lens.role === 'kept' ? (lens.kept?.prism ?? lens.prism) : lens.prism)?.value ?? NONE;
}

/**
 * The prism a lens is to have, prism dioptres in the examiner’s frame: as written, or its half of the whole where it is to
 * be shared equally. Horizontal and vertical parts are shared each by its own sum, the vertical one with opposite bases.
 * Yoked prism points the same way in both lenses, so there is no sum to share.
 */
export function sharedPrism(order: Order, eye: Eye): PrismVector {
  const written = writtenPrism(order, eye);
  if (order.split?.value !== 'equal' || order.yoked) return written;
  const [R, L] = [prismBeforeEye(writtenPrism(order, 'R'), 'R'), prismBeforeEye(writtenPrism(order, 'L'), 'L')];
  const up = (R.up - L.up) / 2;
  return prismInFrame({ in: (R.in + L.in) / 2, up: eye === 'R' ? up : 0 - up }, eye);
}

/** The lab may share the prism as it likes: it was told so, or given nothing but the whole. */
export const isSharedFreely = ({ split, isPrismTotal, yoked }: Order): boolean =>
  !yoked && (split ? split.value === 'free' : isPrismTotal);

/** The order says how each lens is to share in it, so each is held to its share. */
export const isShareOrdered = (order: Order, part: PrismPart): boolean =>
  (order.yoked || order.split?.value === 'equal' || order.split?.value === 'as-written') &&
  (['R', 'L'] as const).some((eye) => !isSame(tidy(writtenPrism(order, eye)[part]), 0));
