import type { Power } from '../../optics/power';
import type { PublishedAnswer } from './answer';

/** Cylinders (dioptres, minus) at the head of the columns. */
const cylinders = [0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3];

/** Degrees off axis, over-refraction cylinder by column, and the angle of its axis from the correct one. */
const table: readonly (readonly [number, readonly number[], number])[] = [
  [5, [0.13, 0.17, 0.22, 0.26, 0.31, 0.35, 0.39, 0.44, 0.48, 0.52], 42.5],
  [10, [0.26, 0.35, 0.43, 0.52, 0.61, 0.69, 0.78, 0.87, 0.96, 1.04], 40],
  [15, [0.39, 0.52, 0.65, 0.78, 0.91, 1.04, 1.16, 1.29, 1.42, 1.55], 37.5],
  [20, [0.51, 0.68, 0.86, 1.03, 1.2, 1.37, 1.54, 1.71, 1.88, 2.05], 35],
  [25, [0.63, 0.85, 1.06, 1.27, 1.48, 1.69, 1.9, 2.11, 2.32, 2.54], 32.5],
  [30, [0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3], 30],
  [35, [0.86, 1.15, 1.43, 1.72, 2.01, 2.29, 2.58, 2.87, 3.15, 3.44], 27.5],
  [40, [0.96, 1.29, 1.61, 1.93, 2.25, 2.57, 2.89, 3.21, 3.54, 3.86], 25],
  [45, [1.06, 1.41, 1.77, 2.12, 2.47, 2.83, 3.18, 3.54, 3.89, 4.24], 22.5],
];

/** Sphere of the over-refraction in the column of 2.00, degree by degree. */
const spheresAtTwo = [0.17, 0.35, 0.52, 0.68, 0.85, 1, 1.15, 1.29, 1.41];

/** A cylinder worn off its axis: what the over-refraction finds. */
export const axisErrors: readonly PublishedAnswer<{ cylinder: number; axisError: number }>[] = table.flatMap(
  ([axisError, entries, axis], row) =>
    cylinders.map((cylinder, column) => ({
      id: `2-${String(2 + row * cylinders.length + column).padStart(2, '0')}`,
      input: { cylinder: -cylinder, axisError },
      printed: {
        cylinder: entries[column] ?? Number.NaN,
        fromCorrectAxis: axis,
        ...(cylinder === 2 && { sphere: spheresAtTwo[row] ?? Number.NaN }),
      },
      tolerance: 0.005 + 1e-9,
      source: 'IACLE' as const,
    })),
);

/** Two lenses in contact. */
export const contactSum: PublishedAnswer<{ first: Power; second: Power }> = {
  id: '2-01',
  input: { first: { sphere: 1.75, cylinder: 0.5, axis: 45 }, second: { sphere: -2.25, cylinder: -1, axis: 135 } },
  printed: { sphere: 0, cylinder: -1.5, axis: 135 },
  tolerance: 1e-9,
  source: 'JAL-2205',
  note: 'The formula as typeset halves only the cylinder; the whole sum is halved, as the worked case shows.',
};

/** Share of the cylinder left when it stands 10 degrees off its axis. */
export const tenDegrees: PublishedAnswer<{ cylinder: number; axisError: number }> = {
  id: '2-92',
  input: { cylinder: -3, axisError: 10 },
  printed: { share: 1 / 3 },
  tolerance: 0.02,
  source: 'FEL',
  note: 'Printed as one third; twice the sine of 10 degrees is 0.347.',
};
