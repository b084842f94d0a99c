/** The permitted values of a quantity. `least` and `most` are themselves permitted, `above` and `below` are not. */
export interface PermittedRange {
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly below?: number;
}

/** Thrown whenever a value lies outside the range a formula holds for. It carries what is needed to say so in any words. */
export class OutOfRange extends RangeError {
  override readonly name = 'OutOfRange';

  constructor(
    readonly quantity: string,
    readonly value: number,
    readonly permitted: PermittedRange,
  ) {
    super(`${quantity} is ${value}, permitted is ${inWords(permitted)}`);
  }
}

/**
 * Returns `value` unchanged when it is a finite number inside `permitted`, with negative zero made zero.
 * Throws OutOfRange otherwise, so that no formula ever works on NaN or infinity.
 */
export function within(quantity: string, value: number, permitted: PermittedRange): number {
  const inside =
    Number.isFinite(value) &&
    value >= (permitted.least ?? -Infinity) &&
    value > (permitted.above ?? -Infinity) &&
    value <= (permitted.most ?? Infinity) &&
    value < (permitted.below ?? Infinity);
  if (!inside) throw new OutOfRange(quantity, value, permitted);
  return value + 0;
}

/** Principal powers, dioptres. Stronger spectacle lenses are not made; 40 D also catches a missing decimal point. */
export const POWER: PermittedRange = { least: -40, most: 40 };
/** Surface powers, dioptres. A lens of 40 D can carry stronger surfaces than the lens itself. */
export const SURFACE_POWER: PermittedRange = { least: -60, most: 60 };
/** Refractive index. At 1 there is no lens; spectacle materials end near 1.9. */
export const INDEX: PermittedRange = { above: 1, most: 3 };
/** Any angle that can be turned round the circle, degrees. */
export const ANGLE: PermittedRange = { least: -720, most: 720 };
/** Pantoscopic tilt or wrap of a frame, degrees. */
export const TILT: PermittedRange = { least: -45, most: 45 };
/** Tilt and wrap taken together, degrees. */
export const EFFECTIVE_TILT: PermittedRange = { least: -75, most: 75 };
/** Thickness of a lens on its axis, millimetres. */
export const THICKNESS: PermittedRange = { least: 0, most: 50 };
/** Coordinates and displacements on a lens, millimetres. */
export const DISPLACEMENT: PermittedRange = { least: -100, most: 100 };
/** Prism, prism dioptres. */
export const PRISM: PermittedRange = { least: -100, most: 100 };

function inWords(permitted: PermittedRange): string {
  const parts: string[] = [];
  if (permitted.least !== undefined) parts.push(`at least ${permitted.least}`);
  if (permitted.above !== undefined) parts.push(`above ${permitted.above}`);
  if (permitted.most !== undefined) parts.push(`at most ${permitted.most}`);
  if (permitted.below !== undefined) parts.push(`below ${permitted.below}`);
  return parts.length === 0 ? 'any finite number' : parts.join(' and ');
}
