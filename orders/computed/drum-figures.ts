/** What a focimeter is to show: drum positions at the reference point and in the segment, and an add on the wrong side. */

import { addErrorOnOtherSurface, expectedDrum, minusForm } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { isMade, isSegmented } from '../lens-kinds';
import { ASSUMED } from './assumptions';
import { bodyOf } from './body';
import { addOf, type Case, known, powerOf } from './case';
import { degrees, dioptres, type Known, together, type Worked, work } from './figure';
import { SOURCES } from './sources';
import { usualBodyOf } from './usual-body';

/** With the back surface on the stop the drum shows the power itself. */
export function drum(one: Case): Worked | null {
  const power = powerOf(one);
  if (!power) return null;
  const { sphere, cylinder, axis } = power.value;
  const basis = {
    formula: 'back surface on the stop, thin lines at the sphere, wide lines at sphere + cylinder, wheel at the axis',
    inputs: power.inputs,
    source: SOURCES.drum,
  };
  return work('drum', one.eye, basis, () => {
    const lines = { thin: dioptres(sphere), wide: dioptres(sphere + cylinder) };
    return cylinder === 0 ? lines : { thin: lines.thin, wide: lines.wide, wheel: degrees(axis) };
  });
}

/** Both positions of an add by difference: the lens is turned over, so that the wheel shows the mirrored axis. */
export function drumInSegment(one: Case): Worked | null {
  const [power, add, body] = [powerOf(one), addOf(one), bodyOf(one)];
  if (!isMade(one.lens) || !isSegmented(one.lens) || !power || !add || !body) return null;
  const { front, index, centre: thickness } = body.value;
  const basis = {
    formula:
      'front surface on the stop, front vertex power = front surface + back surface / (1 − thickness / index × back surface); in the segment + add',
    inputs: together(power.inputs, add.inputs, body.inputs),
    source: SOURCES.vertexPowers,
    assumed: [...power.assumed, ASSUMED.segmentInFront, ...body.assumed],
  };
  return work('drum-in-segment', one.eye, basis, () => {
    const { thin, wide, wheel } = expectedDrum(minusForm(power.value), { front, index, thickness }, 'front');
    return {
      distanceThin: dioptres(thin),
      distanceWide: dioptres(wide),
      segmentThin: dioptres(thin + add.value),
      segmentWide: dioptres(wide + add.value),
      ...(power.value.cylinder === 0 ? {} : { wheel: degrees(wheel) }),
    };
  });
}

/**
 * How much too strong an add comes out with the back surface on the stop, dioptres, and what that rests on. Where the
 * order does not say curve, thickness and index, usual ones are taken and said. Null for a lens without a segment.
 */
export function backSurfaceError(one: Case): Known<number> | null {
  const add = addOf(one);
  const body = isMade(one.lens) && isSegmented(one.lens) ? (bodyOf(one) ?? usualBodyOf(one)) : null;
  if (!add || !body) return null;
  const { front, index, centre } = body.value;
  const error = attempt(() => addErrorOnOtherSurface(front, add.value, centre, index));
  const inputs = together(add.inputs, body.inputs);
  return error === null
    ? null
    : known(tidy(error), inputs, [ASSUMED.segmentInFront, ASSUMED.segmentThickness, ...body.assumed]);
}

/** How much too strong the add comes out with the back surface on the stop, distance and segment alike. */
export function addError(one: Case): Worked | null {
  const [add, body] = [addOf(one), bodyOf(one)];
  if (!isMade(one.lens) || !isSegmented(one.lens) || !add || !body) return null;
  const { front, index, centre } = body.value;
  const basis = {
    formula:
      'back vertex power of the front surface with the add, less that without it, less the add: F / (1 − thickness / index × F)',
    inputs: together(add.inputs, body.inputs),
    source: SOURCES.vertexPowers,
    assumed: [ASSUMED.segmentInFront, ...body.assumed],
  };
  return work('add-error', one.eye, basis, () => ({
    error: dioptres(addErrorOnOtherSurface(front, add.value, centre, index)),
  }));
}
