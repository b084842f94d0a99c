/** How far each lens stands from its own half of the ordered distance. */
import type { Eye } from '../../grammar';
import { tidy } from '../exact';
import type { Place } from '../finding';
import type { Failed, Scene } from './scene';

export interface Centres {
  /** Millimetres from the place before the eye, outwards positive. */
  readonly R: number;
  readonly L: number;
  /** The failed measures that rest on them. */
  readonly failed: readonly Failed[];
}

/**
 * The displacement of each centre, or null where the two were not read apart, or nothing that rests on them failed. Halves
 * that the order does not give are taken as equal.
 */
export function centresOf({ order, values, failed }: Scene): Centres | null {
  const read = [values.figures.pd, values.figures['optical-centres']].find((one) => one?.R && one.L);
  const half = order.pd.binocular && order.pd.binocular.value / 2;
  const wanted = (eye: Eye): number | null => order.pd[eye]?.value ?? half;
  const [right, left] = [wanted('R'), wanted('L')];
  if (!read?.R || !read.L || right === null || left === null) return null;
  const places: readonly Place[] = [read.R.place, read.L.place];
  const resting = failed.filter(
    ({ quantity, place }) => (quantity === 'pd' || quantity === 'prism-horizontal') && places.includes(place),
  );
  if (resting.length === 0) return null;
  return { R: tidy(read.R.value - right), L: tidy(read.L.value - left), failed: resting };
}
