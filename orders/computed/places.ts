/** Where the points of a lens stand: reference point, segment, and the place one reads through. Millimetres. */

import {
  decentration,
  insetByConvergence,
  monocularDecentration,
  powerAt,
  segmentDrop,
  segmentInset,
} from '../../optics';
import { attempt } from '../attempt';
import { hasPlainSegment, isSegmented } from '../lens-kinds';
import { EYES, type Order, type OrderedLens } from '../model';
import { placingPd } from '../placing-pd';
import {
  ASSUMED,
  FLAT_TOP_CENTRE,
  FLAT_TOP_WIDTHS,
  INTO_SEGMENT,
  READING_LEVEL,
  TO_ROTATION_CENTRE,
  WORKING_DISTANCE,
} from './assumptions';
import { type Case, known, once, powerOf } from './case';
import { assumed, dioptres, type Known, length, mm, ordered, together, worked } from './figure';

/**
 * The reference point from the boxed centre, positive inwards; of a pair made for near by its near PD. The distance of
 * this eye counts before that of the pair.
 */
export const inwardsOf = once(({ order, eye }): Known<number> | null => {
  const { a, dbl } = order.frame;
  if (!a || !dbl) return null;
  const { of: pd, isNear } = placingPd(order);
  const [own, both] = [pd[eye], pd.binocular];
  const name = isNear ? 'near PD' : 'PD';
  const inputs = { A: length(a), DBL: length(dbl) };
  const inwards = own
    ? attempt(() => monocularDecentration(a.value, dbl.value, own.value))
    : both && attempt(() => decentration(a.value, dbl.value, both.value));
  if (inwards == null) return null;
  const distance = own ? { [`${name} ${eye}`]: length(own) } : { [name]: length(both as typeof a) };
  return known(inwards, together(inputs, distance));
});

/** The reference point from the boxed centre, positive upwards, where the height is that of the point and not of a segment. */
export const raiseOf = once(({ order, lens }): Known<number> | null => {
  const { b } = order.frame;
  if (!b || !lens.height || isSegmented(lens)) return null;
  return known(lens.height.value - b.value / 2, { height: length(lens.height), B: length(b) });
});

/** The top of the segment below the boxed centre line. */
export const dropOf = once(({ order, lens }): Known<number> | null => {
  const drop = dropInMm(order, lens);
  const { b } = order.frame;
  return drop === null || !b || !lens.height ? null : known(drop, { B: length(b), height: length(lens.height) });
});

function dropInMm({ frame: { b } }: Order, lens: OrderedLens): number | null {
  const { height } = lens;
  return b && height && isSegmented(lens) ? attempt(() => segmentDrop(height.value, b.value)) : null;
}

/** How far the near point stands inwards of the distance point, as the order says. */
export const orderedInset = once(({ order, lens, eye }): Known<number> | null => {
  if (lens.inset) return known(lens.inset.value, { inset: length(lens.inset) });
  const { pd, nearPd } = order;
  const [far, near] = [pd[eye], nearPd[eye]];
  if (far && near) {
    return known(far.value - near.value, { [`PD ${eye}`]: length(far), [`near PD ${eye}`]: length(near) });
  }
  const [bothFar, bothNear] = [pd.binocular, nearPd.binocular];
  if (!bothFar || !bothNear) return null;
  const inset = attempt(() => segmentInset(bothFar.value, bothNear.value));
  return inset === null ? null : known(inset, { PD: length(bothFar), 'near PD': length(bothNear) });
});

/** Where the order gives no near PD: as far as the eye turns in towards the near point, through the prism of the lens. */
export const insetByTurning = once((one): Known<number> | null => {
  if (hasNearPlace(one)) return null;
  const [half, power] = [halfPd(one), powerOf(one)];
  if (!half || !power) return null;
  const cm = one.lens.design?.value.working;
  const away = cm ? cm * 10 : WORKING_DISTANCE;
  const along = attempt(() => powerAt(power.value, 180));
  const inset = along === null ? null : attempt(() => insetByConvergence(half.value, away, along, TO_ROTATION_CENTRE));
  if (along === null || inset === null) return null;
  const inputs = together(half.inputs, {
    'working distance': cm ? ordered(mm(away)) : assumed(mm(away)),
    'horizontal power': worked(dioptres(along)),
    'distance to the centre of rotation': assumed(mm(TO_ROTATION_CENTRE)),
  });
  const taken = [...(cm ? [] : [ASSUMED.workingDistance]), ASSUMED.rotationCentre];
  return known(inset, inputs, [...half.assumed, ...taken]);
});

const hasNearPlace = ({ order: { nearPd }, lens }: Case): boolean =>
  lens.inset !== null || nearPd.binocular !== null || nearPd.R !== null || nearPd.L !== null;

/** The distance of this eye alone; half of that of the pair where no more is said. */
export const halfPd = once(({ order: { pd }, eye }): Known<number> | null => {
  const [own, both] = [pd[eye], pd.binocular];
  if (own) return known(own.value, { 'half PD': length(own) });
  if (!both) return null;
  return known(both.value / 2, { PD: length(both), 'half PD': worked(mm(both.value / 2)) }, [ASSUMED.halvesEqual]);
});

/** Where one reads, below the distance centres: a little into the segments, the lower one of two, or else the usual level. */
export const readingLevelOf = once(({ order }): Known<number> => {
  const level = levelInSegments(order);
  if (level === null)
    return known(READING_LEVEL, { 'reading level': assumed(mm(READING_LEVEL)) }, [ASSUMED.readingLevel]);
  return known(level, { 'reading level': worked(mm(level)) }, [ASSUMED.intoSegment, ASSUMED.centreOnDatum]);
});

/** The level that the segments say; null where they say none, and the usual one holds. */
export function levelInSegments(order: Order): number | null {
  let lowest = Number.NEGATIVE_INFINITY;
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    const drop = lens.role === 'absent' ? null : dropInMm(order, lens);
    // The height of a trifocal is that of its upper line; one reads below the lower one.
    const more = lens.design?.value.type === 'trifocal' ? (lens.design.value.depth ?? Number.NaN) : 0;
    if (drop !== null && Number.isFinite(more)) lowest = Math.max(lowest, drop + more);
  }
  const level = lowest + INTO_SEGMENT;
  return level > 0 ? level : null;
}

/** Depth of the optical centre of a segment below its top, from its shape and size. */
export function segmentCentreOf({ lens }: Pick<Case, 'lens'>): Known<number> | null {
  const design = lens.design?.value;
  if (!design || !hasPlainSegment(lens)) return null;
  const { shape, width, depth } = design;
  if (shape === 'full-width') return known(0, { 'centre of the segment': worked(mm(0)) });
  if (width === null) return null;
  const size = { 'segment width': ordered(mm(width)) };
  if (shape === 'round') return known(width / 2, together(size, { 'centre of the segment': worked(mm(width / 2)) }));
  if (depth !== null) {
    // The segment is wider than deep, whichever figure comes first.
    const [wide, deep] = [Math.max(width, depth), Math.min(width, depth)];
    const below = deep - wide / 2;
    const inputs = { 'segment width': ordered(mm(wide)), 'segment depth': ordered(mm(deep)) };
    return below < 0 ? null : known(below, together(inputs, { 'centre of the segment': worked(mm(below)) }));
  }
  if (width < FLAT_TOP_WIDTHS.least || width > FLAT_TOP_WIDTHS.most) return null;
  const inputs = together(size, { 'centre of the segment': assumed(mm(FLAT_TOP_CENTRE)) });
  return known(FLAT_TOP_CENTRE, inputs, [ASSUMED.segmentCentre]);
}
