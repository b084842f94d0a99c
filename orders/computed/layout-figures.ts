/** Figures of the layout: where the points of a lens stand in its frame, and the blank that covers it. */

import { minimumBlank, monocularDecentration, totalInset } from '../../optics';
import { isForNear, isSegmented } from '../lens-kinds';
import { ASSUMED, CHIPPING_MARGIN } from './assumptions';
import type { Case } from './case';
import { assumed, type Inputs, type Known, length, mm, together, type Worked, work, worked } from './figure';
import { dropOf, halfPd, insetByTurning, inwardsOf, orderedInset, raiseOf } from './places';
import { SOURCES } from './sources';

export function decentration(one: Case): Worked | null {
  const moved = inwardsOf(one);
  if (!moved) return null;
  const distance = Object.keys(moved.inputs).find((name) => name.includes('PD')) ?? 'PD';
  const formula = distance.endsWith(one.eye) ? `(A + DBL) / 2 − ${distance}` : `(A + DBL − ${distance}) / 2`;
  const basis = { formula, inputs: moved.inputs, source: SOURCES.layout };
  return work('decentration', one.eye, basis, () => ({ in: mm(moved.value) }));
}

export function raise(one: Case): Worked | null {
  const raised = raiseOf(one);
  if (!raised) return null;
  const basis = { formula: 'height − B / 2', inputs: raised.inputs, source: SOURCES.layout };
  return work('raise', one.eye, basis, () => ({ up: mm(raised.value) }));
}

/** The theoretical size, and beside it the one with a margin for chipped edges. */
export function blank(one: Case): Worked | null {
  const { ed } = one.order.frame;
  const moved = inwardsOf(one);
  if (!ed || !moved) return null;
  const inputs = {
    ED: length(ed),
    decentration: worked(mm(moved.value)),
    margin: assumed(mm(CHIPPING_MARGIN)),
  };
  const formula = 'ED + 2 × decentration, in or out; then + margin for chipping';
  const basis = { formula, inputs, source: SOURCES.blank, assumed: [ASSUMED.chippingMargin] };
  return work('blank', one.eye, basis, () => ({
    diameter: mm(minimumBlank(ed.value, moved.value)),
    withMargin: mm(minimumBlank(ed.value, moved.value, CHIPPING_MARGIN)),
  }));
}

export function drop(one: Case): Worked | null {
  const dropped = dropOf(one);
  if (!dropped) return null;
  const basis = { formula: 'B / 2 − height', inputs: dropped.inputs, source: SOURCES.layout };
  return work('segment-drop', one.eye, basis, () => ({ below: mm(dropped.value) }));
}

export function inset(one: Case): Worked | null {
  const found = isSegmented(one.lens) ? orderedInset(one) : null;
  if (!found) return null;
  const { eye } = one;
  const formula =
    'inset' in found.inputs ? 'as ordered' : 'PD' in found.inputs ? '(PD − near PD) / 2' : `PD ${eye} − near PD ${eye}`;
  const basis = { formula, inputs: found.inputs, source: SOURCES.insets };
  return work('segment-inset', eye, basis, () => ({ in: mm(found.value) }));
}

/** Where no near PD is ordered: the inset and the near distance of this eye that follow from its distance PD. */
export function nearInset(one: Case): Worked | null {
  if (!one.lens.add && !isForNear(one.lens)) return null;
  const [found, half] = [insetByTurning(one), halfPd(one)];
  if (!found || !half) return null;
  const formula =
    'half PD / (1 + working distance × (1 / distance to the centre of rotation − horizontal power / 1000))';
  const basis = { formula, inputs: found.inputs, source: SOURCES.convergence, assumed: found.assumed };
  return work('near-inset', one.eye, basis, () => ({ in: mm(found.value), nearHalf: mm(half.value - found.value) }));
}

/** Of the segment from the boxed centre. */
export function allInset(one: Case): Worked | null {
  const { order, lens, eye } = one;
  const { a, dbl } = order.frame;
  if (!a || !dbl || !isSegmented(lens)) return null;
  const frame: Inputs = { A: length(a), DBL: length(dbl) };
  const [own, both] = [order.nearPd[eye], order.nearPd.binocular];
  if (!lens.inset && own) {
    const inputs = together(frame, { [`near PD ${eye}`]: length(own) });
    const basis = { formula: `(A + DBL) / 2 − near PD ${eye}`, inputs, source: SOURCES.insets };
    return work('total-inset', eye, basis, () => ({
      in: mm(monocularDecentration(a.value, dbl.value, own.value)),
    }));
  }
  if (!lens.inset && both) {
    const basis = {
      formula: '(A + DBL − near PD) / 2',
      inputs: together(frame, { 'near PD': length(both) }),
      source: SOURCES.insets,
    };
    return work('total-inset', eye, basis, () => ({ in: mm(totalInset(a.value, dbl.value, both.value)) }));
  }
  return summedInset(one, orderedInset(one) ?? insetByTurning(one));
}

function summedInset(one: Case, inset: Known<number> | null): Worked | null {
  const moved = inwardsOf(one);
  if (!moved || !inset) return null;
  const inputs = { decentration: worked(mm(moved.value)), inset: inset.inputs.inset ?? worked(mm(inset.value)) };
  const basis = { formula: 'decentration + inset', inputs, source: SOURCES.insets, assumed: inset.assumed };
  return work('total-inset', one.eye, basis, () => ({ in: mm(moved.value + inset.value) }));
}
