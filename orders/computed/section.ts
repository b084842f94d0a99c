/** The shape of a lens cut through level with its optical centre, for drawing it. */
import type { Eye } from '../../grammar';
import { curvature, sagOfCurvature, thicknessProfile } from '../../optics';
import { attempt } from '../attempt';
import type { Order } from '../model';
import { bodyOf, type Cut, cutOf, edgeOf } from './body';
import { casesOf } from './case';

/** One point of the cut, millimetres. */
export interface SectionPoint {
  /** From the optical centre, positive to the examiner’s right. */
  readonly right: number;
  /** How far the front surface has fallen back behind its vertex. */
  readonly front: number;
  /** The same of the back surface, the thickness behind the front one. */
  readonly back: number;
}

/** So many points are drawn; the curves are smooth. */
const POINTS = 49;

/**
 * Returns the horizontal cut through the optical centre of one lens, from its left edge to its right one as the examiner
 * sees it; null where the order does not say enough for `thickness`, or the surfaces meet before the edge.
 * Source: as for `thickness` and `outlineRadius`.
 */
export function sectionOf(order: Order, eye: Eye): readonly SectionPoint[] | null {
  const one = casesOf(order)[eye];
  if (one.lens.role === 'absent') return null;
  const [cut, body] = [cutOf(one), bodyOf(one)];
  if (!cut || !body) return null;
  return attempt(() => pointsOf(cut.value, body.value.centre));
}

function pointsOf(cut: Cut, centre: number): readonly SectionPoint[] | null {
  const [left, right] = edgesLevelWithCentre(cut);
  const thickness = thicknessProfile({ ...cut.lens, centre });
  const convex = curvature(cut.lens.front, cut.lens.index);
  const points = Array.from({ length: POINTS }, (_, at) => {
    const x = left + ((right - left) * at) / (POINTS - 1);
    const front = sagOfCurvature(convex, Math.abs(x));
    return { right: x, front, back: front + thickness({ right: x, up: 0 }) };
  });
  return points.every(({ front, back }) => back >= front) ? points : null;
}

/** Where the outline is nearest to the level of the centre, on either side of it. */
function edgesLevelWithCentre(cut: Cut): readonly [left: number, right: number] {
  const level = (points: ReturnType<typeof edgeOf>): number =>
    points.reduce((best, one) => (Math.abs(one.up) < Math.abs(best.up) ? one : best), points[0] as (typeof points)[0])
      .right;
  const edge = edgeOf(cut);
  return [level(edge.filter(({ right }) => right < 0)), level(edge.filter(({ right }) => right >= 0))];
}
