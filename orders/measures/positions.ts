/** Where segments and fitting points stand: heights, the difference between them, the near PD, width and tilt. */
import { tidy } from '../exact';
import { type PlainTable, plainLimit } from '../limits';
import { EYES, type OrderedLens } from '../model';
import type { Read } from '../reduce';
import { type Case, classOfLens, figureAgainst, judge, type Measure, notRead } from './measure';

/** A design whose height is that of a segment or of a fitting point, and not that of an optical centre. */
const hasPoint = ({ design }: OrderedLens): boolean => design !== null && design.value.type !== 'single-vision';
const hasSegment = (lens: OrderedLens): boolean =>
  hasPoint(lens) && classOfLens(lens) !== 'progressive' && lens.design?.value.shape !== 'full-width';

export function positionMeasures(one: Case): Measure[] {
  if (one.order.supply !== 'glazed') return [];
  return [...heights(one), ...nearPd(one), ...segments(one)];
}

function heights({ order, values, set, guard }: Case): Measure[] {
  const measures: Measure[] = [];
  const errors: { readonly error: number; readonly from: Read<number> }[] = [];
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    if (lens.role !== 'made' || !hasPoint(lens) || !lens.height) continue;
    const subject = { quantity: 'height', eye, unit: 'mm' } as const;
    const read = values.figures.height?.[eye];
    if (!read) {
      measures.push(notRead(subject, lens.height.value));
      continue;
    }
    const error = tidy(read.value - lens.height.value);
    errors.push({ error, from: read });
    const table: PlainTable = classOfLens(lens) === 'progressive' ? 'fittingHeight' : 'segmentHeight';
    measures.push(judge(subject, figureAgainst(lens.height.value, read, plainLimit(set, table)), guard));
  }
  const [right, left] = errors;
  if (!right || !left) return measures;
  const table: PlainTable = EYES.some((eye) => classOfLens(order.lenses[eye]) === 'progressive')
    ? 'fittingHeightDifference'
    : 'segmentHeightDifference';
  const limit = plainLimit(set, table);
  const difference = tidy(right.error - left.error);
  // The difference is that of the two errors, so unequal heights may be ordered.
  if (limit) {
    const held = { from: left.from, ordered: 0, read: difference, deviation: difference, limit };
    measures.push(judge({ quantity: 'height-difference', eye: null, unit: 'mm' }, held, guard));
  }
  return measures;
}

/** The near PD is that of the segments; a progressive sets its own. */
function nearPd({ order, values, set, guard }: Case): Measure[] {
  if (!EYES.every((eye) => hasSegment(order.lenses[eye]))) return [];
  const { binocular, R, L } = order.nearPd;
  const ordered = binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);
  if (ordered === null) return [];
  const near = values.figures['near-pd'];
  const read = near?.pair ?? (near?.R && near.L ? { ...near.R, value: tidy(near.R.value + near.L.value) } : null);
  const subject = { quantity: 'near-pd', eye: null, unit: 'mm' } as const;
  if (!read) return [notRead(subject, ordered)];
  return [judge(subject, figureAgainst(ordered, read, plainLimit(set, 'segmentHorizontal')), guard)];
}

/** Width and tilt are judged where they were read; no order is incomplete without them. */
function segments({ order, values, set, guard }: Case): Measure[] {
  return EYES.flatMap((eye) => {
    const lens = order.lenses[eye];
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
