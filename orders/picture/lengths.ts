/** Lengths beside the lenses: frame, PDs, heights; what was read in a row of its own, broken. */
import type { Eye } from '../../grammar';
import { distancesRead } from '../measures/places';
import { type Distances, EYES, type Placed } from '../model';
import { placingPd } from '../placing-pd';
import type { ReadValues } from '../reduce';
import { amountInWords } from '../words';
import { across, line, upright } from './drawing';
import { element, type Markup, together } from './markup';
import type { Plane } from './plane';
import { type LensScene, type Scene, type Spot, sideOf } from './scene';

/** From the boxes to the first row of lengths, and from one row to the next, units. */
const FIRST = 34;
const ROW = 34;

/** A and DBL below the boxes. */
export function widthLengths({ frame }: Scene, { x, y }: Plane): Markup | null {
  if (!frame) return null;
  const at = y(-frame.b / 2) + FIRST;
  const [inner, outer] = [frame.dbl / 2, frame.dbl / 2 + frame.a];
  return together(
    across(x(-outer), x(-inner), at, `A ${frame.a}`, 'plain'),
    across(x(-inner), x(inner), at, `DBL ${frame.dbl}`, 'plain'),
    across(x(inner), x(outer), at, `A ${frame.a}`, 'plain'),
  );
}

/** Above the boxes the distances between the reference points, below them those between the segments. */
export function pdLengths(scene: Scene, plane: Plane): Markup {
  const { order, values, frame, lenses } = scene;
  const top = plane.y(frame ? frame.b / 2 : 0);
  const { of, isNear } = placingPd(order);
  const name = isNear ? 'near PD' : 'PD';
  const read = distancesRead(order, values).find((one) => one?.R || one?.L || one?.pair);
  const points = (which: 'ordered' | 'read') => EYES.map((eye) => lenses[eye][which]);
  const segments = (which: 'ordered' | 'read') => EYES.map((eye) => lenses[eye].segment?.[which] ?? null);
  const bottom = plane.y(frame ? -frame.b / 2 : 0) + FIRST + ROW;
  return together(
    leaders(points('ordered'), plane, top - FIRST - 4),
    between(points('ordered'), placed(of), name, top - FIRST, 'ordered', plane),
    between(points('read'), figuresOf(read), 'read', top - FIRST - ROW, 'read', plane),
    segments('ordered').some(Boolean)
      ? between(segments('ordered'), placed(order.nearPd), 'near PD', bottom, 'ordered', plane)
      : null,
    between(segments('read'), figuresOf(values.figures['near-pd']), 'read', bottom + ROW, 'read', plane),
  );
}

interface Figures {
  readonly pair: number | null;
  readonly R: number | null;
  readonly L: number | null;
}

const lengthOf = (one: Placed<number> | null): number | null => one?.value ?? null;
const placed = ({ binocular, R, L }: Distances): Figures => ({
  pair: lengthOf(binocular),
  R: lengthOf(R),
  L: lengthOf(L),
});
const figuresOf = (read: ReadValues['figures']['pd']): Figures => ({
  pair: read?.pair?.value ?? null,
  R: read?.R?.value ?? null,
  L: read?.L?.value ?? null,
});

/** Thin lines that lead from the points up to their lengths. */
const leaders = (spots: readonly (Spot | null)[], { x, y }: Plane, to: number): Markup =>
  together(spots.map((spot) => spot && line(x(spot.right), y(spot.up), x(spot.right), to, 'leader')));

/** One length over both eyes where only the sum is said, else one for each eye from the middle of the bridge. */
function between(
  spots: readonly (Spot | null)[],
  { pair, R, L }: Figures,
  name: string,
  at: number,
  kind: 'ordered' | 'read',
  { x }: Plane,
): Markup | null {
  const [right, left] = spots;
  if (R === null && L === null) {
    if (pair === null || !right || !left) return null;
    return across(x(right.right), x(left.right), at, `${name} ${pair}`, kind);
  }
  return together(
    R !== null && right ? across(x(right.right), x(0), at, `${name} R ${R}`, kind) : null,
    L !== null && left ? across(x(0), x(left.right), at, `${name} L ${L}`, kind) : null,
  );
}

/** From the lower tangent of the box to the point that the height is of. */
export function heightLengths({ frame, lenses, values }: Scene, eye: Eye, { x, y }: Plane): Markup | null {
  const one = lenses[eye];
  if (!frame || !one.middle || one.lens.role === 'absent') return null;
  const side = sideOf(eye);
  const edge = x(one.middle.right + (side * frame.a) / 2);
  const foot = y(-frame.b / 2);
  const { ordered, read } = pointsOf(one);
  const [wanted, found] = [one.lens.height?.value, values.figures.height?.[eye]?.value];
  return element(
    'g',
    { class: `heights ${eye}` },
    wanted !== undefined && ordered
      ? together(
          line(x(ordered.right), y(ordered.up), edge + side * 26, y(ordered.up), 'leader'),
          upright(edge + side * 20, foot, y(ordered.up), amountInWords(wanted, 'mm'), side, 'ordered'),
        )
      : null,
    found !== undefined && read
      ? upright(edge + side * 44, foot, y(read.up), `read ${amountInWords(found, 'mm')}`, side, 'read')
      : null,
  );
}

/** The height is that of the segment where there is one. */
const pointsOf = (one: LensScene): Pick<LensScene, 'ordered' | 'read'> => one.segment ?? one;
