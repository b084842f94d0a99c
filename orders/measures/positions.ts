/** Where segments and fitting points stand: heights, the difference between them, the near PD, width and tilt. */
import { tidy } from '../exact';
import { isMade } from '../lens-kinds';
import { type PlainTable, plainLimit } from '../limits';
import { type Distances, EYES, type Order, type OrderedLens, type PerEye, type Placed } from '../model';
import type { Read } from '../reduce';
import { figureAgainst, judge } from './judge';
import { type Case, classOfLens, type Measure, notRead, type Subject } from './measure';
import { differenceOf, sumOf } from './sums';

/** A design whose height is that of a segment or of a fitting point, and not that of an optical centre. */
const hasPoint = ({ design }: OrderedLens): boolean => design !== null && design.value.type !== 'single-vision';
const hasSegment = (lens: OrderedLens): boolean =>
  hasPoint(lens) && classOfLens(lens) !== 'progressive' && lens.design?.value.shape !== 'full-width';

/** @param placed what the placing of the pair has judged already; a PD of one eye is one measure */
export function positionMeasures(one: Case, placed: readonly Measure[]): Measure[] {
  const measures: Measure[] = [];
  if (one.order.supply === 'glazed') {
    const isPlaced = ({ eye }: Measure): boolean =>
      placed.some((other) => other.quantity === 'pd' && other.eye === eye);
    measures.push(...fittingPlaces(one).filter((measure) => !isPlaced(measure)), ...heights(one), ...nearPd(one));
  }
  if (one.values.figures['segment-width'] || one.values.figures['segment-tilt'])
    measures.push(...segments(one), ...segmentDifference(one));
  return measures;
}

/**
 * The fitting points of progressives stand before each eye, whatever the power. They are called for by every set; one
 * without a limit of its own for them judges the prism that their places make.
 */
function fittingPlaces({ order, values, set, guard }: Case): Measure[] {
  const limit = plainLimit(set, 'fittingHorizontal');
  return EYES.flatMap((eye) => {
    const ordered = order.pd[eye];
    const lens = order.lenses[eye];
    if (!ordered || lens.role !== 'made' || classOfLens(lens) !== 'progressive') return [];
    const subject = { quantity: 'pd', eye, unit: 'mm' } as const;
    const read = values.figures.pd?.[eye];
    if (!read) return [notRead(subject, ordered.value)];
    return limit ? [judge(subject, figureAgainst(ordered.value, read, limit), guard)] : [];
  });
}

function heights(one: Case): Measure[] {
  const { order, values, set, guard } = one;
  const measures: Measure[] = [];
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    if (!isMade(lens) || !hasPoint(lens) || !lens.height) continue;
    const subject: Subject = { quantity: 'height', eye, unit: 'mm' };
    const read = values.figures.height?.[eye];
    const table: PlainTable = classOfLens(lens) === 'progressive' ? 'fittingHeight' : 'segmentHeight';
    measures.push(
      read
        ? judge(subject, figureAgainst(lens.height.value, read, plainLimit(set, table)), guard)
        : notRead(subject, lens.height.value),
    );
    const upper = upperHeight(one, lens);
    if (upper) measures.push(upper);
  }
  const difference = heightDifference(one);
  if (difference) measures.push(difference);
  return measures;
}

/**
 * The lower edge of the upper segment, where it is ordered, or follows from the height of the lower one and the gap and was
 * read.
 */
function upperHeight({ values, set, guard }: Case, lens: OrderedLens): Measure | null {
  const { height, upperHeight: own, design } = lens;
  const gap = design?.value.gap ?? null;
  const ordered = own?.value ?? (height && gap !== null ? tidy(height.value + gap) : null);
  const read = values.figures['upper-height']?.[lens.eye];
  if (ordered === null || (!read && !own)) return null;
  const subject: Subject = { quantity: 'upper-height', eye: lens.eye, unit: 'mm' };
  return read
    ? judge(subject, figureAgainst(ordered, read, plainLimit(set, 'segmentHeight')), guard)
    : notRead(subject, ordered);
}

const hasHeight = (lens: OrderedLens): boolean => lens.role !== 'absent' && hasPoint(lens) && lens.height !== null;

/** The difference is that of the two errors, so unequal heights may be ordered. A lens that stays in the frame counts too. */
function heightDifference({ order, values, set, guard }: Case): Measure | null {
  const { R, L } = order.lenses;
  const [right, left] = [values.figures.height?.R, values.figures.height?.L];
  if (!right || !left || !hasHeight(R) || !hasHeight(L)) return null;
  const isFitting = classOfLens(R) === 'progressive' || classOfLens(L) === 'progressive';
  const table: PlainTable = isFitting ? 'fittingHeightDifference' : 'segmentHeightDifference';
  const limit = plainLimit(set, table);
  const ordered = tidy((R.height?.value ?? 0) - (L.height?.value ?? 0));
  if (!limit) return null;
  const difference = differenceOf(right, left);
  const { place } = left.reading >= right.reading ? left : right;
  const held = figureAgainst(ordered, { ...difference, place }, limit);
  return judge({ quantity: 'height-difference', eye: null, unit: 'mm' }, held, guard);
}

/** The near PD is that of the segments; a progressive sets its own. Some sets limit the sum, others each segment. */
function nearPd({ order, values, set, guard }: Case): Measure[] {
  if (!EYES.every((eye) => hasSegment(order.lenses[eye]) && order.lenses[eye].role !== 'absent')) return [];
  const limit = plainLimit(set, 'segmentHorizontal');
  const near = values.figures['near-pd'];
  const ordered = orderedEach(order);
  if (set.segmentHorizontal?.counted === 'each-eye' && ordered && near?.R && near.L) {
    return [near.R, near.L].map((read, at) => {
      const eye = EYES[at] as 'R' | 'L';
      return judge({ quantity: 'near-pd', eye, unit: 'mm' }, figureAgainst(ordered[eye].value, read, limit), guard);
    });
  }
  const sum = sumOrdered(order.nearPd);
  if (sum === null) return [];
  const read = near?.pair ?? (near?.R && near.L ? sumOf(near.R, near.L) : null);
  const subject = { quantity: 'near-pd', eye: null, unit: 'mm' } as const;
  if (!read) return [notRead(subject, sum)];
  const figure = figureAgainst(sum, read, limit);
  if (set.segmentHorizontal?.counted === 'each-eye') figure.assumed = 'worst-split';
  return [judge(subject, figure, guard)];
}

function orderedEach({ nearPd: { R, L } }: Order): PerEye<Placed<number>> | null {
  return R && L && { R, L };
}

const sumOrdered = ({ binocular, R, L }: Distances): number | null =>
  binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);

/** Width and tilt are judged where they were read; no order is incomplete without them. */
function segments({ order, values, set, guard }: Case): Measure[] {
  return EYES.flatMap((eye) => {
    const lens = order.lenses[eye];
    if (!isMade(lens)) return [];
    const measures: Measure[] = [];
    const width = values.figures['segment-width']?.[eye];
    const ordered = lens.design?.value.width;
    if (width && ordered != null && hasSegment(lens)) {
      const held = figureAgainst(ordered, width, plainLimit(set, 'segmentSize'));
      measures.push(judge({ quantity: 'segment-width', eye, unit: 'mm' }, held, guard));
    }
    const tilt = values.figures['segment-tilt']?.[eye];
    if (tilt && hasPoint(lens)) {
      const table: PlainTable = classOfLens(lens) === 'progressive' ? 'markTilt' : 'segmentTilt';
      const held = figureAgainst(0, tilt, plainLimit(set, table));
      measures.push(judge({ quantity: 'segment-tilt', eye, unit: 'deg' }, held, guard));
    }
    return measures;
  });
}

/** Segments of unlike sizes are seen on the face. A lens that stays in the frame counts too. */
function segmentDifference({ order, values, set, guard }: Case): Measure[] {
  const limit = plainLimit(set, 'segmentSizeDifference');
  const [right, left] = [widthOf('R'), widthOf('L')];
  function widthOf(eye: 'R' | 'L'): { readonly ordered: number; readonly read: Read<number> } | null {
    const lens = order.lenses[eye];
    const ordered = lens.design?.value.width ?? null;
    const read = values.figures['segment-width']?.[eye];
    return ordered !== null && read && hasSegment(lens) && lens.role !== 'absent' ? { ordered, read } : null;
  }
  if (!limit || !right || !left) return [];
  const held = figureAgainst(tidy(right.ordered - left.ordered), differenceOf(right.read, left.read), limit);
  return [judge({ quantity: 'segment-width-difference', eye: null, unit: 'mm' }, held, guard)];
}
