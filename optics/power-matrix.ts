import { radians } from './angles';
import { checkPower, type Power } from './power';
import { fromVector } from './power-vector';
import { ANGLE, within } from './range';

/**
 * A lens as a symmetric matrix, all parts in dioptres: `xx` acts along the horizontal, `yy` along the vertical, `xy` turns
 * one into the other. x points to the examiner's right and y up.
 */
export interface PowerMatrix {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * Returns the power matrix (dioptres) of a lens. Its trace is twice the spherical equivalent, its determinant the product
 * of both principal powers. A lens outside the range of checkPower throws OutOfRange.
 * Source: Long/Keating/Harris power matrix, from memory of Keating, Geometric, Physical and Visual Optics.
 */
export function toMatrix(power: Power): PowerMatrix {
  checkPower(power);
  const sine = Math.sin(radians(power.axis));
  const cosine = Math.cos(radians(power.axis));
  return {
    xx: power.sphere + power.cylinder * sine ** 2 + 0,
    xy: -power.cylinder * sine * cosine + 0,
    yy: power.sphere + power.cylinder * cosine ** 2 + 0,
  };
}

/**
 * Returns the lens, in minus form, of a power matrix (dioptres). Parts that make a mean or a cross-cylinder beyond 80 D
 * throw OutOfRange.
 * Source: Long/Keating/Harris power matrix, from memory of Keating, Geometric, Physical and Visual Optics.
 */
export function fromMatrix(matrix: PowerMatrix): Power {
  return fromVector({ m: (matrix.xx + matrix.yy) / 2, j0: (matrix.xx - matrix.yy) / 2, j45: matrix.xy });
}

/**
 * Returns the same lens seen in axes that stand `degrees` counter-clockwise of the old ones, so that a lens with its axis
 * on the new x axis becomes one with its axis at 180. Angles beyond two turns throw OutOfRange.
 * Source: similarity transformation of a symmetric matrix by a rotation.
 */
export function turnedAxes(matrix: PowerMatrix, degrees: number): PowerMatrix {
  const angle = radians(within('angle', degrees, ANGLE));
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const { xx, xy, yy } = matrix;
  return {
    xx: c * c * xx + 2 * c * s * xy + s * s * yy,
    xy: c * s * (yy - xx) + (c * c - s * s) * xy,
    yy: s * s * xx - 2 * c * s * xy + c * c * yy,
  };
}
