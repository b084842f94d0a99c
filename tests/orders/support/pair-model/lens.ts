/**
 * One lens as a matrix, for the tests alone: nothing here asks the product. Dioptres, millimetres, degrees; directions are
 * the examiner's right and up. From Fannin & Grosvenor and Harris's dioptric power matrix, as far as remembered.
 */
export interface Toric {
  readonly sphere: number;
  /** Zero or below. */
  readonly cylinder: number;
  /** 1 to 180. */
  readonly axis: number;
}

export interface Vector {
  readonly right: number;
  readonly up: number;
}

export type Eye = 'R' | 'L';
export type Both<T> = Readonly<Record<Eye, T>>;

export const EYES: readonly Eye[] = ['R', 'L'];
export const NOTHING: Vector = { right: 0, up: 0 };

export const both = <T>(of: (eye: Eye) => T): Both<T> => ({ R: of('R'), L: of('L') });

/** Power along the right, across, and along up. */
interface Matrix {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** The cylinder acts square to its axis. */
export function matrixOf({ sphere, cylinder, axis }: Toric): Matrix {
  const angle = (axis * Math.PI) / 180;
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  return { xx: sphere + cylinder * y * y, xy: -cylinder * x * y, yy: sphere + cylinder * x * x };
}

/** Prism of a point that lies so far from the optical centre: Prentice's rule, the base towards the centre of a plus lens. */
export function prismOf(lens: Toric, centre: Vector): Vector {
  const { xx, xy, yy } = matrixOf(lens);
  return { right: (xx * centre.right + xy * centre.up) / 10, up: (xy * centre.right + yy * centre.up) / 10 };
}

/** Where the centre of a lens must stand to make a prism: the inverse of Prentice's rule. */
export function centreFor(lens: Toric, { right, up }: Vector): Vector {
  const { xx, xy, yy } = matrixOf(lens);
  const det = xx * yy - xy * xy;
  return { right: (10 * (yy * right - xy * up)) / det, up: (10 * (xx * up - xy * right)) / det };
}

/** Absolute power along a direction: of the right and left, or of up and down. */
export const along = (lens: Toric, direction: 'horizontal' | 'vertical'): number => {
  const { xx, yy } = matrixOf(lens);
  return Math.abs(direction === 'horizontal' ? xx : yy);
};

export const strongest = ({ sphere, cylinder }: Toric): number =>
  Math.max(Math.abs(sphere), Math.abs(sphere + cylinder));
export const weakest = ({ sphere, cylinder }: Toric): number => Math.min(Math.abs(sphere), Math.abs(sphere + cylinder));

export const minus = (a: Vector, b: Vector): Vector => ({ right: a.right - b.right, up: a.up - b.up });
export const plus = (a: Vector, b: Vector): Vector => ({ right: a.right + b.right, up: a.up + b.up });

/** The nose lies to the examiner's right of the right eye, and to the left of the left one. */
export const inwards = (eye: Eye, { right }: Vector): number => (eye === 'R' ? right : -right) + 0;
/** From millimetres outwards and upwards. */
export const outAndUp = (eye: Eye, out: number, up: number): Vector => ({ right: (eye === 'R' ? -out : out) + 0, up });

/** Without the noise of binary fractions. */
export const exactly = (value: number): number => Number(value.toFixed(6)) + 0;
