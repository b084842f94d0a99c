import type { Power } from '../../optics/power';
import type { PublishedAnswer } from './answer';

type Row = PublishedAnswer<Power>;

/** Half of the second printed digit; the hair more lets an exact half be rounded either way, as the second sheet does. */
const HUNDREDTH = 0.005 + 1e-9;

/** Power in the meridians 90, 180, 45 and 122, printed to two digits. */
export const firstSheet: readonly Row[] = [
  four('1-29', 3.5, 0, 180, [3.5, 3.5, 3.5, 3.5]),
  four('1-30', -1, -1, 180, [-2, -1, -1.5, -1.72]),
  four('1-31', 0.5, -2, 30, [-1, 0, 0.37, -1.5]),
  four('1-32', -1, 1, 80, [-0.97, -0.03, -0.67, -0.55]),
  four('1-33', -1, 3, 110, [-0.65, 1.65, 1.46, -0.87]),
  four('1-34', 8.75, -2.25, 5, [6.52, 8.73, 7.82, 6.96]),
  four('1-35', -16.75, -2, 179, [-18.75, -16.75, -17.78, -18.16]),
  four('1-36', -16.75, 2, 5, [-14.77, -16.73, -15.92, -15.16]),
  four('1-37', -0.75, 1, 92, [-0.75, 0.25, -0.22, -0.5]),
  {
    ...four('1-38', -1.62, 1.75, 115, [-1.31, -0.18, -0.07, -1.59]),
    note: 'Worked from −1.62 as written; the exact eighth −1.625 would give −1.31, −0.19, −0.08, −1.60.',
  },
  four('1-39', 0.25, -0.5, 135, [0, 0, -0.25, 0.22]),
  four('1-40', 0, -0.5, 58, [-0.14, -0.36, -0.03, -0.4]),
  four('1-41', -4.25, 0, 180, [-4.25, -4.25, -4.25, -4.25]),
  four('1-42', 0, 3.75, 53, [1.36, 2.39, 0.07, 3.27]),
  four('1-43', 0.25, -0.5, 145, [-0.09, 0.09, -0.23, 0.17]),
  four('1-44', 0.25, -0.25, 135, [0.13, 0.13, 0, 0.24]),
  four('1-45', 22.5, -3.5, 58, [21.52, 19.98, 22.32, 19.67]),
  four('1-46', -0.25, -0.5, 33, [-0.6, -0.4, -0.27, -0.75]),
  four('1-47', 1, -2, 90, [1, -1, 0, 0.44]),
];

/** Power in the meridians 90 and 180. */
export const secondSheet: readonly Row[] = [
  two('1-48', 2.5, -1, 30, [1.75, 2.25]),
  two('1-49', -3.25, 2, 135, [-2.25, -2.25]),
  two('1-50', 0, -2, 150, [-1.5, -0.5]),
  two('1-51', 3, -3, 45, [1.5, 1.5]),
  { ...two('1-52', 3, -1.5, 60, [2.63, 1.88]), note: 'Exactly 2.625 and 1.875; this sheet rounds half up.' },
  two('1-53', -5, 0, 180, [-5, -5]),
  two('1-54', -1.25, -1, 180, [-2.25, -1.25]),
  two('1-55', 2, -4, 120, [1, -1]),
  two('1-56', -1, 4, 60, [0, 2]),
  two('1-57', 12, -2, 90, [12, 10]),
];

/** One lens and one meridian. */
export const otherMeridians: readonly PublishedAnswer<{ power: Power; meridian: number }>[] = [
  {
    id: '1-58',
    input: { power: { sphere: 3, cylinder: -1.5, axis: 102 }, meridian: 90 },
    printed: { power: 2.94 },
    tolerance: HUNDREDTH,
    source: 'OED-OM',
  },
  {
    id: '1-60',
    input: { power: { sphere: 2, cylinder: 5, axis: 30 }, meridian: 180 },
    printed: { power: 3.25 },
    tolerance: HUNDREDTH,
    source: 'ABOC',
  },
];

/** Whole percent of the cylinder that acts at an angle from its axis. */
export const percentages: PublishedAnswer<readonly number[]> = {
  id: '1-61',
  input: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90],
  printed: {
    at5: 1,
    at10: 3,
    at15: 7,
    at20: 12,
    at25: 18,
    at30: 25,
    at35: 33,
    at40: 41,
    at45: 50,
    at50: 59,
    at55: 67,
    at60: 75,
    at65: 82,
    at70: 88,
    at75: 93,
    at80: 97,
    at85: 99,
    at90: 100,
  },
  tolerance: 0.5,
  source: 'ABOC',
};

function four(id: string, sphere: number, cylinder: number, axis: number, printed: readonly number[]): Row {
  const [at90 = Number.NaN, at180 = Number.NaN, at45 = Number.NaN, at122 = Number.NaN] = printed;
  return {
    id,
    input: { sphere, cylinder, axis },
    printed: { at90, at180, at45, at122 },
    tolerance: HUNDREDTH,
    source: 'NFOS-10A',
  };
}

function two(id: string, sphere: number, cylinder: number, axis: number, printed: readonly number[]): Row {
  const [at90 = Number.NaN, at180 = Number.NaN] = printed;
  return {
    id,
    input: { sphere, cylinder, axis },
    printed: { at90, at180 },
    tolerance: HUNDREDTH,
    source: 'NFOS-10A',
  };
}
