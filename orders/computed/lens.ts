/** What is worked out from an order alone: forms of the power, near power, decentration, segment and blank. */

import type { Eye } from '../../grammar';
import {
  type MeridianPower,
  minimumBlank,
  minusForm,
  nearPower,
  type Power,
  plusForm,
  principalMeridians,
  sphericalEquivalent,
} from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { isSegmented } from '../lens-kinds';
import type { Order } from '../model';
import { powerToMake } from '../power-to-make';
import { casesOf } from './case';
import type { Known } from './figure';
import { dropOf, inwardsOf, orderedInset, raiseOf } from './places';

/** Figures of one lens. Dioptres, degrees and millimetres; null where the order does not say enough. */
export interface ComputedLens {
  readonly eye: Eye;
  /** As written, in one cylinder form. */
  readonly ordered: Power;
  readonly add: number | null;
  /** The power to be made and verified at the reference point, minus form; null when the maker has not stated it. */
  readonly made: Power | null;
  readonly minus: Power;
  readonly plus: Power;
  readonly meridians: readonly [MeridianPower, MeridianPower];
  readonly sphericalEquivalent: number;
  /** Distance power plus the add, in the written form. */
  readonly near: Power | null;
  /** Of the reference point from the boxed centre, positive inwards and upwards. */
  readonly decentration: { readonly in: number; readonly up: number | null } | null;
  /** Drop of the segment below the boxed centre line, and its inset from the distance PD. */
  readonly segment: { readonly drop: number | null; readonly inset: number | null } | null;
  /** Smallest blank: effective diameter and twice the decentration, without a chipping margin. */
  readonly blank: number | null;
}

/** Works out one lens, or returns null when the order gives it no power. */
export function computeLens(order: Order, eye: Eye): ComputedLens | null {
  const lens = order.lenses[eye];
  if (!lens.written) return null;
  const ordered = lens.written.value;
  const one = casesOf(order)[eye];
  return attempt(() => {
    const target = powerToMake(order, lens);
    const add = lens.add?.value ?? null;
    const inwards = inwardsOf(one);
    const { ed } = order.frame;
    return {
      eye,
      ordered,
      add,
      made: target?.kind === 'known' ? minusForm(target.power) : null,
      minus: minusForm(ordered),
      plus: plusForm(ordered),
      meridians: principalMeridians(ordered),
      sphericalEquivalent: tidy(sphericalEquivalent(ordered)),
      near: add === null ? null : nearPower(ordered, add),
      decentration: inwards && { in: tidy(inwards.value), up: figureOf(raiseOf(one)) },
      segment: isSegmented(lens) ? { drop: figureOf(dropOf(one)), inset: figureOf(orderedInset(one)) } : null,
      blank: inwards && ed ? attempt(() => tidy(minimumBlank(ed.value, inwards.value))) : null,
    };
  });
}

const figureOf = (known: Known<number> | null): number | null => known && tidy(known.value);
