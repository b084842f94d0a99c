/** From typed figures to values: powers, prisms. A figure that could not be read makes no value, and no second finding. */
import type { Base, Eye, Figure, PowerNode, PrismComponent } from '../grammar';
import {
  componentsFromBase,
  fromMeridians,
  normalAxis,
  type Power,
  type PrismVector,
  prismBeforeEye,
  prismInFrame,
} from '../optics';
import { attempt } from './attempt';
import { BASE_SIGNS, type CylinderForm, type TypedPower } from './model';

/** The figures of a power, or null when one of them is missing or unreadable. */
export function typedPower(node: PowerNode | null): TypedPower | null {
  if (!node) return null;
  if (node.form === 'sphero-cylinder') {
    const sphere = node.sphere?.value;
    const cylinder = node.cylinder ? node.cylinder.value : 0;
    if (sphere === undefined || sphere === null || cylinder === null) return null;
    if (cylinder === 0) return { sphere, cylinder: 0, axis: null, form: 'sphere' };
    if (!node.axis || node.axis.value === null) return null;
    return { sphere, cylinder, axis: node.axis.value, form: cylinder < 0 ? 'minus' : 'plus' };
  }
  if (node.form === 'lines') return drumPower(node.thin, node.wide, node.wheel);
  const { first, second } = node;
  const values = [first.power.value, first.meridian?.value, second?.power.value, second?.meridian?.value];
  const [power, meridian, other, square] = values;
  if (power == null || meridian == null || other == null || square == null || Math.abs(meridian - square) !== 90)
    return null;
  const lens = fromMeridians({ meridian, power }, { meridian: square, power: other });
  return { ...lens, axis: lens.cylinder === 0 ? null : lens.axis, form: 'meridians' };
}

/** Two drum positions: the thin lines give the sphere, the way on to the wide lines is the cylinder. */
function drumPower(thin: Figure | null, wide: Figure | null, wheel: Figure | null): TypedPower | null {
  if (thin?.value == null) return null;
  if (!wide) return { sphere: thin.value, cylinder: 0, axis: null, form: 'lines' };
  if (wide.value === null) return null;
  const cylinder = Math.round((wide.value - thin.value) * 1e6) / 1e6;
  if (cylinder === 0) return { sphere: thin.value, cylinder: 0, axis: null, form: 'lines' };
  if (wheel?.value == null) return null;
  return { sphere: thin.value, cylinder, axis: wheel.value, form: 'lines' };
}

/** A typed power as an optical one; a sphere takes the conventional axis of 180. */
export const asPower = ({ sphere, cylinder, axis }: TypedPower): Power => ({
  sphere,
  cylinder,
  axis: axis === null ? 180 : normalAxis(axis),
});

/**
 * The sum of prism components before one eye as a vector in the examiner’s frame, or null when a component has no base
 * (unless its amount is nothing), no readable amount, or is written as a change.
 */
export function prismOf(components: readonly PrismComponent[], eye: Eye): PrismVector | null {
  let right = 0;
  let up = 0;
  for (const { amount, base, degrees, relative } of components) {
    if (amount.value === null || relative) return null;
    if (amount.value === 0) continue;
    const { value } = amount;
    const angle = degrees?.value ?? null;
    // The formulas refuse an amount beyond any spectacle prism; what they refuse is no value here.
    const part = attempt(() =>
      angle !== null ? componentsFromBase(value, angle % 360) : base ? named(value, base, eye) : null,
    );
    if (!part) return null;
    right += part.right;
    up += part.up;
  }
  // Only a base that is written again and again comes to more than the formulas take, and that is told by itself.
  return attempt(() => prismBeforeEye({ right, up }, eye)) && { right, up };
}

function named(amount: number, base: Base, eye: Eye): PrismVector {
  const sign = BASE_SIGNS[base];
  return prismInFrame({ in: amount * sign.in, up: amount * sign.up }, eye);
}

export const formOf = (typed: TypedPower): CylinderForm => (typed.form === 'lines' ? 'minus' : typed.form);
