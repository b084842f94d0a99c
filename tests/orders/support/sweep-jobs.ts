/** Jobs on a grid for the sweep: every combination of the main figures, the others going round with them. */
import { exactly, lensText, sphere } from './walk';

export interface Lens {
  readonly sphere: number;
  /** Zero or below: the lens in minus form. */
  readonly cylinder: number;
  readonly axis: number;
}

export interface Side {
  readonly ordered: Lens;
  readonly read: Lens;
  readonly add: number;
  readonly prism: string;
  readonly height: number;
  readonly pd: number;
  readonly base: number;
}

export type Kind = 'single vision' | 'bifocal' | 'progressive' | 'uncut';

export interface Job {
  readonly kind: Kind;
  readonly R: Side;
  readonly L: Side;
  /** A second reading of the right lens, off by so much. */
  readonly again: number | null;
}

const KINDS: readonly Kind[] = ['single vision', 'bifocal', 'progressive', 'uncut'];
const SPHERES = [-8, -4.25, -2, 0.25, 6.5];
const CYLINDERS = [0, -0.25, -0.75, -2.25];
const ERRORS = [0, 0.12, -0.125, 0.13, -0.17];
const CYLINDER_ERRORS = [0, -0.13];
const TURNS = [0, 3, -8];

const AXES = [5, 45, 90, 178, 180];
const PRISMS = ['0', '0.25 BI', '0.34 BU', '0', '0.67 BO', '0', '0.50 BD'];
const HEIGHTS = [17, 17, 18, 16, 17.6, 17, 18.5, 17, 16.4, 17, 17];
const DISTANCES = [31, 31, 32.2, 31, 30, 31, 33.6, 31, 31.9];
const ADDS = [2, 2, 2.12, 2, 2.13];
const BASES = [4, 4, 4.5, 4, 4.8];

const pick = <T>(list: readonly T[], at: number): T => list[at % list.length] as T;

/** All jobs of the grid, in a fixed order. */
export function* sweepJobs(): Generator<Job> {
  let at = 0;
  for (const kind of KINDS)
    for (const power of SPHERES)
      for (const cylinder of CYLINDERS)
        for (const error of ERRORS)
          for (const more of CYLINDER_ERRORS)
            for (const turn of TURNS) {
              const axis = pick(AXES, at);
              const ordered = { sphere: power, cylinder, axis };
              const read = {
                sphere: exactly(power + error),
                // A sphere that reads a little cylinder, and a cylinder that reads more of it.
                cylinder: exactly(cylinder + more),
                axis: ((axis + turn + 179) % 180) + 1,
              };
              const other = {
                sphere: pick(SPHERES, at + 2),
                cylinder: pick(CYLINDERS, at + 1),
                axis: pick(AXES, at + 3),
              };
              yield {
                kind,
                R: { ordered, read, ...around(at) },
                L: { ordered: other, read: other, ...around(at * 3 + 1) },
                again: at % 17 === 0 ? pick([0, 0.06, 0.2], at) : null,
              };
              at++;
            }
}

const around = (at: number): Omit<Side, 'ordered' | 'read'> => ({
  add: pick(ADDS, at),
  prism: pick(PRISMS, at),
  height: pick(HEIGHTS, at),
  pd: pick(DISTANCES, at),
  base: pick(BASES, at),
});

/** The pair in a mirror: with both eyes exchanged every axis leans the other way, or its prism would too. */
export const swapped = (job: Job): Job => ({ ...job, R: mirrored(job.L), L: mirrored(job.R) });

const mirrored = ({ ordered, read, ...side }: Side): Side => ({
  ...side,
  ordered: leaning(ordered),
  read: leaning(read),
});
const leaning = ({ axis, ...lens }: Lens): Lens => ({ ...lens, axis: axis === 180 ? 180 : 180 - axis });

export interface Forms {
  readonly ordered: 'minus' | 'plus';
  readonly read: 'minus' | 'plus';
}

const text = ({ sphere: power, cylinder, axis }: Lens, form: 'minus' | 'plus'): string =>
  lensText([power, power + cylinder], axis, form);

const DESIGNS: Readonly<Record<Kind, readonly string[]>> = {
  'single vision': ['design single-vision', 'pd 62', 'height 17', 'frame A 50 B 38 DBL 18'],
  bifocal: ['design bifocal flat-top 28', 'add +2.00', 'pd 62 near 59', 'height 17', 'frame A 50 B 38 DBL 18'],
  progressive: ['design progressive', 'add +2.00', 'pd R 31 L 31', 'height 17', 'frame A 50 B 38 DBL 18'],
  uncut: ['design single-vision', 'supply uncut'],
};

/** A job as text; which eye repeats its reading goes with the lens. */
export function jobText({ kind, R, L, again }: Job, forms: Forms, repeats: 'R' | 'L' = 'R'): string {
  const repeated = repeats === 'R' ? R : L;
  const second = again === null ? [] : [`again ${repeats} ${text(shifted(repeated.read, again), forms.read)}`];
  const near = kind === 'bifocal' ? [`pd ${R.pd + L.pd} near 59`] : [`pd R ${R.pd} L ${L.pd}`];
  const mounted = kind === 'uncut' ? [] : [...near, `height R ${R.height} L ${L.height}`];
  const adds = kind === 'bifocal' || kind === 'progressive' ? [`add R ${sphere(R.add)} L ${sphere(L.add)}`] : [];
  return [
    'order S-1',
    `R ${text(R.ordered, forms.ordered)}`,
    `L ${text(L.ordered, forms.ordered)}`,
    ...DESIGNS[kind],
    'base-curve 4.00',
    'reading 2026-11-24',
    `R ${text(R.read, forms.read)}`,
    ...(repeats === 'R' ? second : []),
    `L ${text(L.read, forms.read)}`,
    ...(repeats === 'L' ? second : []),
    ...adds,
    `prism R ${R.prism} L ${L.prism}`,
    ...mounted,
    `base-curve R ${R.base.toFixed(2)} L ${L.base.toFixed(2)}`,
  ].join('\n');
}

const shifted = (lens: Lens, by: number): Lens => ({ ...lens, sphere: exactly(lens.sphere + by) });
