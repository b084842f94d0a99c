import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { axisDistance, type Power, principalMeridians } from '../../optics/power';
import { fromMatrix, type PowerMatrix, toMatrix, turnedAxes } from '../../optics/power-matrix';
import { sum } from '../../optics/power-vector';
import { prentice } from '../../optics/prism';
import { decentrationForPrism } from '../../optics/prism-decentration';
import { close } from './support/close';
import { refused } from './support/refused';

const lenses: readonly Power[] = [
  { sphere: 6, cylinder: -3, axis: 140 },
  { sphere: 3, cylinder: 2, axis: 60 },
  { sphere: -4.5, cylinder: -0.75, axis: 22 },
  { sphere: 2, cylinder: -4, axis: 135 },
  { sphere: 0.25, cylinder: -0.5, axis: 180 },
  { sphere: -1, cylinder: 3, axis: 90 },
];

describe('the matrix against the general matrix library ml-matrix', () => {
  test.each(lenses)('has the principal powers as eigenvalues, the meridians as eigenvectors: %o', (power) => {
    const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(general(toMatrix(power)));
    for (const { meridian, power: along } of principalMeridians(power)) {
      const column = realEigenvalues.findIndex((value) => Math.abs(value - along) < 1e-9);
      expect(column).toBeGreaterThanOrEqual(0);
      const [x, y] = eigenvectorMatrix.getColumn(column) as [number, number];
      const direction = (Math.atan2(y, x) * 180) / Math.PI;
      expect(axisDistance(direction, meridian)).toBeLessThan(1e-6);
    }
  });

  test.each(lenses)('adds like matrices: %o', (power) => {
    const other = { sphere: 1.25, cylinder: -2.25, axis: 77 };
    const added = Matrix.add(general(toMatrix(power)), general(toMatrix(other)));
    expect(Matrix.sub(added, general(toMatrix(sum(power, other)))).norm()).toBeLessThan(1e-9);
  });

  test.each(lenses)('gives prism by multiplication and decentration by the inverse: %o', (power) => {
    const centre = { right: -2.5, up: 11 };
    const product = general(toMatrix(power)).mmul(Matrix.columnVector([centre.right / 10, centre.up / 10]));
    const prism = prentice(power, centre);
    close(prism, { right: product.get(0, 0), up: product.get(1, 0) }, 1e-9);
    close(decentrationForPrism(power, prism), centre, 1e-9);
  });

  test.each(lenses)('turns its axes by similarity: %o', (power) => {
    const angle = (35 * Math.PI) / 180;
    const rotation = new Matrix([
      [Math.cos(angle), Math.sin(angle)],
      [-Math.sin(angle), Math.cos(angle)],
    ]);
    const turned = rotation.mmul(general(toMatrix(power))).mmul(rotation.transpose());
    expect(Matrix.sub(turned, general(turnedAxes(toMatrix(power), 35))).norm()).toBeLessThan(1e-9);
  });
});

test('trace is twice the spherical equivalent, determinant the product of the principal powers', () => {
  const { xx, xy, yy } = toMatrix({ sphere: 6, cylinder: -3, axis: 140 });
  expect(xx + yy).toBeCloseTo(9, 9);
  expect(xx * yy - xy * xy).toBeCloseTo(18, 9);
});

test('a lens comes back from its matrix in minus form', () => {
  close(fromMatrix(toMatrix({ sphere: 3, cylinder: 2, axis: 60 })), { sphere: 5, cylinder: -2, axis: 150 }, 1e-9);
  expect(fromMatrix(toMatrix({ sphere: 3, cylinder: 0, axis: 60 }))).toEqual({ sphere: 3, cylinder: 0, axis: 180 });
});

test('nothing is negative zero', () => {
  expect(toMatrix({ sphere: -0, cylinder: -0, axis: 30 })).toEqual({ xx: 0, xy: 0, yy: 0 });
  expect(toMatrix({ sphere: -0, cylinder: 0, axis: 30 })).toEqual({ xx: 0, xy: 0, yy: 0 });
});

test('turning the axes on to the axis of a lens makes it one at 180', () => {
  close(turnedAxes(toMatrix({ sphere: 1, cylinder: -2, axis: 35 }), 35), { xx: 1, xy: 0, yy: -1 }, 1e-9);
  refused(() => turnedAxes({ xx: 1, xy: 0, yy: 1 }, 721), 'angle', 721);
});

test('values beyond their range are refused', () => {
  refused(() => toMatrix({ sphere: 0, cylinder: 0, axis: 0 }), 'axis', 0);
  refused(() => fromMatrix({ xx: 161, xy: 0, yy: 0 }), 'm', 80.5);
  refused(() => fromMatrix({ xx: 0, xy: 81, yy: 0 }), 'j45', 81);
});

function general({ xx, xy, yy }: PowerMatrix): Matrix {
  return new Matrix([
    [xx, xy],
    [xy, yy],
  ]);
}
