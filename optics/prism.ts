import { degrees, radians } from './angles';
import type { Power } from './power';
import { toMatrix } from './power-matrix';
import { DISPLACEMENT, PRISM, within } from './range';

/** The wearer's right or left eye. */
export type Eye = 'R' | 'L';

/**
 * A prism as the vector towards its base, in prism dioptres, in one frame for both eyes: `right` to the examiner's right
 * (the wearer's left), `up` upwards.
 */
export interface PrismVector {
  readonly right: number;
  readonly up: number;
}

/** A place on a lens, millimetres, in the same frame as PrismVector. */
export interface Displacement {
  readonly right: number;
  readonly up: number;
}

/** A prism as named before one eye, prism dioptres: `in` positive base in and negative base out, `up` positive base up. */
export interface EyePrism {
  readonly in: number;
  readonly up: number;
}

/**
 * Returns the prism (prism dioptres) where the eye looks through a lens whose optical centre stands displaced from that
 * place by `displacementOfOpticalCentre` (millimetres, examiner's right and up positive). Thin lens, small angles.
 * A lens outside the range of checkPower or a displacement beyond 100 mm throws OutOfRange.
 * Source: Jalie, The Indian Optician Nov–Dec 2024, pp. 139–140; matrix form.
 */
export function prentice(power: Power, displacementOfOpticalCentre: Displacement): PrismVector {
  const x = within('displacement to the right', displacementOfOpticalCentre.right, DISPLACEMENT);
  const y = within('displacement upwards', displacementOfOpticalCentre.up, DISPLACEMENT);
  const { xx, xy, yy } = toMatrix(power);
  return { right: (xx * x + xy * y) / 10 + 0, up: (xy * x + yy * y) / 10 + 0 };
}

/**
 * Returns the horizontal and vertical parts of a prism of `amount` (0 to 100 prism dioptres) whose base points to
 * `base` (0 to 360 degrees, counter-clockwise from the examiner's right). Other values throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 E; base notation of ISO 8429.
 */
export function componentsFromBase(amount: number, base: number): PrismVector {
  const length = within('prism', amount, { least: 0, most: 100 });
  const angle = radians(within('base', base, { least: 0, most: 360 }));
  return { right: length * Math.cos(angle) + 0, up: length * Math.sin(angle) + 0 };
}

/**
 * Returns one prism from its parts: `amount` in prism dioptres, 0 or above, and `base` in degrees from 0 to below 360.
 * No prism at all has base 0. Parts beyond 100 prism dioptres throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 B; base notation of ISO 8429.
 */
export function resultant(prism: PrismVector): { readonly amount: number; readonly base: number } {
  const right = within('horizontal prism', prism.right, PRISM);
  const up = within('vertical prism', prism.up, PRISM);
  const angle = degrees(Math.atan2(up, right));
  return { amount: Math.hypot(right, up), base: (angle + 360) % 360 };
}

/**
 * Returns a prism as it is named before one eye (base in and base up positive), from the examiner's frame. The right eye
 * has base in at 0 degrees, the left eye at 180. Parts beyond 100 prism dioptres throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 A and answers 01 A; ISO 8429.
 */
export function prismBeforeEye(prism: PrismVector, eye: Eye): EyePrism {
  const right = within('horizontal prism', prism.right, PRISM);
  return { in: (eye === 'R' ? right : -right) + 0, up: within('vertical prism', prism.up, PRISM) };
}

/**
 * Returns the prism in the examiner's frame of one named before an eye (base in and base up positive).
 * Parts beyond 100 prism dioptres throw OutOfRange.
 * Source: Durham Technical Community College, OPH 142, module 01 A and answers 01 A; ISO 8429.
 */
export function prismInFrame(prism: EyePrism, eye: Eye): PrismVector {
  const inwards = within('horizontal prism', prism.in, PRISM);
  return { right: (eye === 'R' ? inwards : -inwards) + 0, up: within('vertical prism', prism.up, PRISM) };
}
