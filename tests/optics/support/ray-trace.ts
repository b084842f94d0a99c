/**
 * A small exact ray trace, sharing nothing with the formulas under test: straight lines, spheres, cylinders and Snell's law in
 * vector form. Light travels towards +z, x points to the examiner's right and y up, lengths are millimetres.
 */
export type Vector = readonly [number, number, number];

export interface Ray {
  readonly from: Vector;
  readonly along: Vector;
}

/** A surface whose vertex lies on the z axis at `vertex`; its centre of curvature lies `radius` further on (Infinity: flat). */
export interface Surface {
  readonly vertex: number;
  readonly radius: number;
  /** Index behind the surface; before the first there is air. */
  readonly index: number;
  /** For a cylinder, the direction of its axis, degrees counter-clockwise from x. */
  readonly axis?: number;
}

/** Surfaces of a lens from front and back radius, thickness and index; a back axis makes the back surface a cylinder. */
export function lensOf(front: number, back: number, thickness: number, index: number, backAxis?: number): Surface[] {
  const last = { vertex: thickness, radius: back, index: 1 };
  return [{ vertex: 0, radius: front, index }, backAxis === undefined ? last : { ...last, axis: backAxis }];
}

export function trace(ray: Ray, surfaces: readonly Surface[]): Ray {
  let before = 1;
  let current: Ray = { ...ray, along: unit(ray.along) };
  for (const surface of surfaces) {
    const turned = surface.axis === undefined ? current : turn(current, -surface.axis);
    const refracted = refract(turned, surface, before);
    current = surface.axis === undefined ? refracted : turn(refracted, surface.axis);
    before = surface.index;
  }
  return current;
}

/** The slopes of a ray against the z axis, along x and y. */
export function slopes(ray: Ray): readonly [number, number] {
  return [ray.along[0] / ray.along[2], ray.along[1] / ray.along[2]];
}

/** Where a ray in the y-z plane crosses the z axis. */
export function crossing(ray: Ray): number {
  return ray.from[2] - (ray.from[1] * ray.along[2]) / ray.along[1];
}

/**
 * Turns a ray with a lens that is first tipped by `tip` degrees (lower edge towards the wearer) and then swung by `swing`
 * degrees (the edge on the examiner's left towards the wearer, which wraps a right lens).
 */
export function tilt(ray: Ray, tip: number, swing: number): Ray {
  const move = (v: Vector) => aboutY(aboutX(v, rad(-tip)), rad(swing));
  return { from: move(ray.from), along: move(ray.along) };
}

/** The inverse of tilt. */
export function untilt(ray: Ray, tip: number, swing: number): Ray {
  const move = (v: Vector) => aboutX(aboutY(v, rad(-swing)), rad(tip));
  return { from: move(ray.from), along: move(ray.along) };
}

function refract(ray: Ray, surface: Surface, before: number): Ray {
  const flat = surface.axis !== undefined;
  const { point, normal } = meet(ray, surface, flat);
  const ratio = before / surface.index;
  const cosine = -dot(normal, ray.along);
  const inside = 1 - ratio ** 2 * (1 - cosine ** 2);
  if (inside < 0) throw new Error('total reflection');
  const along = add(scale(ray.along, ratio), scale(normal, ratio * cosine - Math.sqrt(inside)));
  return { from: point, along: unit(along) };
}

/** The point where a ray meets a surface, and the normal there, against the light. For a cylinder x plays no part. */
function meet(ray: Ray, surface: Surface, cylinder: boolean): { point: Vector; normal: Vector } {
  if (!Number.isFinite(surface.radius)) {
    const far = (surface.vertex - ray.from[2]) / ray.along[2];
    return { point: add(ray.from, scale(ray.along, far)), normal: [0, 0, -1] };
  }
  const drop = (v: Vector): Vector => (cylinder ? [0, v[1], v[2]] : v);
  const centre: Vector = [0, 0, surface.vertex + surface.radius];
  const away = drop(subtract(ray.from, centre));
  const along = drop(ray.along);
  const a = dot(along, along);
  const half = dot(along, away);
  const root = Math.sqrt(half ** 2 - a * (dot(away, away) - surface.radius ** 2));
  if (Number.isNaN(root)) throw new Error('the ray misses the surface');
  const far = (-half - Math.sign(surface.radius) * root) / a;
  const point = add(ray.from, scale(ray.along, far));
  return { point, normal: scale(drop(subtract(point, centre)), 1 / surface.radius) };
}

function turn(ray: Ray, angle: number): Ray {
  const [c, s] = [Math.cos(rad(angle)), Math.sin(rad(angle))];
  const move = ([x, y, z]: Vector): Vector => [c * x - s * y, s * x + c * y, z];
  return { from: move(ray.from), along: move(ray.along) };
}

function aboutX([x, y, z]: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [x, c * y - s * z, s * y + c * z];
}

function aboutY([x, y, z]: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c * x + s * z, y, c * z - s * x];
}

function rad(angle: number): number {
  return (angle * Math.PI) / 180;
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function add(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function subtract(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function scale(a: Vector, by: number): Vector {
  return [a[0] * by, a[1] * by, a[2] * by];
}

function unit(a: Vector): Vector {
  return scale(a, 1 / Math.sqrt(dot(a, a)));
}
