import { isLess, roundTo } from '../../exact';
import type { Rule } from '../rule';

/** Frames are measured to half a millimetre. */
const ALLOWED = 0.5;

export const edImpossible: Rule = {
  code: 'ed-impossible',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The effective diameter is smaller than the boxed width or height, or larger than the diagonal of the box.',
    why: 'No shape fits. The blank is chosen by this figure; one that is too small does not cover the lens.',
    example: { wrong: 'frame A 52 B 36 DBL 18 ED 48', right: 'frame A 52 B 36 DBL 18 ED 55' },
    source: 'Geometry of the boxing system (ISO 8624): the diameter is twice the longest radius from the boxed centre.',
  },
  message: ({ ed, least, most }) =>
    `An ED of ${ed} mm fits no lens of this box: it lies between ${least} and ${most} mm.`,
  check: ({ order: { frame } }, report) => {
    const { a, b, ed } = frame;
    if (!a || !ed) return;
    const least = Math.max(a.value, b?.value ?? 0);
    const most = b ? Math.hypot(a.value, b.value) : Number.POSITIVE_INFINITY;
    if (!isLess(ed.value, least - ALLOWED) && !isLess(most + ALLOWED, ed.value)) return;
    const data = { ed: ed.value, least, most: b ? roundTo(most, 1) : roundTo(Math.SQRT2 * a.value, 1) };
    report(ed.place, data, { related: [a.place, ...(b ? [b.place] : [])] });
  },
};
