import { radians } from './angles';
import { type Power, principalMeridians } from './power';
import type { Displacement, PrismVector } from './prism';
import { DISPLACEMENT, INDEX, OutOfRange, PRISM, within } from './range';
import { curvature, sagOfCurvature } from './surfaces';
import { backSurfaceFor } from './thick-lens';
import { toricSag } from './toric-surface';

/**
 * What is to be made: back vertex `power` at the optical centre, a spherical `front` surface of true power in dioptres,
 * refractive `index`, and, if wanted, a `prism` worked into it (prism dioptres at the optical centre), taken as a thin wedge.
 */
export interface LensToMake {
  readonly power: Power;
  readonly front: number;
  readonly index: number;
  readonly prism?: PrismVector;
}

/** A lens with its `centre` thickness, millimetres, at the optical centre. */
export interface MadeLens extends LensToMake {
  readonly centre: number;
}

/** The thickness (millimetres, along the axis) at one point of a lens, millimetres from its optical centre. */
export interface PointThickness {
  readonly point: Displacement;
  readonly thickness: number;
}

/** Knife edges of lenses that are bevelled later may be as thin as this and no thinner, millimetres. */
const LEAST_EDGE = { least: 0, most: 30 };
/** How closely the wanted thickness is met, millimetres. */
const CLOSE = 1e-11;

/**
 * Returns the thickness of a lens (millimetres, measured along its axis) at a point, millimetres from the optical centre. The
 * back surface is the exact (toric) one that the wanted power needs at this centre thickness. A point where the surfaces have
 * already met, a curve too steep to reach the point, or values outside their range throw OutOfRange.
 * Source: The Indian Optician, May–June 2023, p. 112 (edge plus front sag equals centre plus back sag).
 */
export function thicknessAt(lens: MadeLens, point: Displacement): number {
  return within('thickness at the point', thicknessProfile(lens)(point), { least: 0 });
}

/**
 * Returns the thinnest and the thickest of the given points of a lens, such as those of outlinePoints. Negative figures
 * tell that the surfaces meet before that point is reached. An empty list throws OutOfRange, as in thicknessAt.
 * Source: The Indian Optician, May–June 2023, p. 112.
 */
export function edgeThickness(
  lens: MadeLens,
  points: readonly Displacement[],
): { readonly thinnest: PointThickness; readonly thickest: PointThickness } {
  const at = thicknessProfile(lens);
  const all = points.map((point) => ({ point, thickness: at(point) }));
  const [first, ...others] = all;
  if (first === undefined) throw new OutOfRange('number of points', 0, { least: 1 });
  return {
    thinnest: others.reduce((best, next) => (next.thickness < best.thickness ? next : best), first),
    thickest: others.reduce((best, next) => (next.thickness > best.thickness ? next : best), first),
  };
}

/**
 * Returns the least centre thickness (millimetres) with which a lens is nowhere thinner than `least.edge` at the given points and no
 * thinner than `least.centre` at its optical centre (millimetres, 0 to 30 each). Power, thickness and back curve depend on
 * each other; the three are solved together, not by the thin-lens estimate. If no thickness up to 50 mm will do, or a
 * value is outside its range, OutOfRange is thrown.
 * Source: The Indian Optician, May–June 2023, p. 112, with the back surface of backSurfaceFor.
 */
export function centreThicknessFor(
  lens: LensToMake,
  points: readonly Displacement[],
  least: { readonly edge: number; readonly centre: number },
): number {
  const edge = within('edge thickness', least.edge, LEAST_EDGE);
  const spare = (centre: number) => edgeThickness({ ...lens, centre }, points).thinnest.thickness - edge;
  const thin = within('centre thickness', least.centre, LEAST_EDGE);
  const missing = -spare(thin);
  if (missing <= 0) return thin;
  // More thickness calls for a more concave back, so the edge gains at least what the centre gains.
  return rootNear(spare, thin, thin + missing);
}

/**
 * Returns the thickness (millimetres) that a prism (prism dioptres, 0 to 100) adds at its base over its apex, `width`
 * millimetres apart (0 to 100), taken as a thin wedge. Values outside their range throw OutOfRange.
 * Source: thin prism, from memory of Jalie, Principles of Ophthalmic Lenses.
 */
export function wedgeThickness(prism: number, width: number, index: number): number {
  const base = within('prism', prism, { least: 0, most: 100 }) * within('width', width, { least: 0, most: 100 });
  return base / (100 * (within('index', index, INDEX) - 1));
}

/**
 * Returns the thickness of a lens as a function of the point, negative where the surfaces have already met.
 * Range and source as for thicknessAt.
 */
export function thicknessProfile(lens: MadeLens): (point: Displacement) => number {
  const { index, centre, front } = lens;
  const [first, second] = principalMeridians(lens.power);
  const back = (power: number) => -curvature(backSurfaceFor(power, front, centre, index), index);
  const along = back(first.power);
  const across = back(second.power);
  const convex = curvature(front, index);
  const cosine = Math.cos(radians(first.meridian));
  const sine = Math.sin(radians(first.meridian));
  const wedge = 1 / (100 * (index - 1));
  const right = within('horizontal prism', lens.prism?.right ?? 0, PRISM) * wedge;
  const up = within('vertical prism', lens.prism?.up ?? 0, PRISM) * wedge;
  return (point) => {
    const x = within('point to the right', point.right, DISPLACEMENT);
    const y = within('point upwards', point.up, DISPLACEMENT);
    const hollow = toricSag(along, across, x * cosine + y * sine, y * cosine - x * sine);
    return centre + hollow - sagOfCurvature(convex, Math.hypot(x, y)) + right * x + up * y;
  };
}

/** The secant method, which is safe here: the thickness missing is smooth and grows steadily with the centre. */
function rootNear(value: (at: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [atA, atB] = [value(a), value(b)];
  for (let round = 0; Math.abs(atB) > CLOSE && round < 50; round++) {
    const next = b - (atB * (b - a)) / (atB - atA);
    [a, atA, b, atB] = [b, atB, next, value(next)];
  }
  within('thickness still missing', atB, { least: -CLOSE, most: CLOSE });
  return b;
}
