/** What is worked out from an order alone: forms of the power, near power, decentration, segment and blank. */

import type { Eye } from '../../grammar';
import {
  decentration,
  type MeridianPower,
  minimumBlank,
  minusForm,
  monocularDecentration,
  nearPower,
  type Power,
  plusForm,
  principalMeridians,
  segmentDrop,
  segmentInset,
  sphericalEquivalent,
} from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import type { Order, OrderedLens } from '../model';
import { powerToMake } from '../power-to-make';

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
  return attempt(() => {
    const target = powerToMake(order, lens);
    const add = lens.add?.value ?? null;
    const moved = decentred(order, lens);
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
      decentration: moved,
      segment: segmentOf(order, lens),
      blank:
        moved && order.frame.ed ? attempt(() => tidy(minimumBlank(order.frame.ed?.value as number, moved.in))) : null,
    };
  });
}

/** The wide side decides: both distances of a pair are worked out from the boxed centres. */
function decentred(order: Order, lens: OrderedLens): ComputedLens['decentration'] {
  const { a, b, dbl } = order.frame;
  if (!a || !dbl) return null;
  const monocular = order.pd[lens.eye];
  const pd = order.pd.binocular;
  const inwards = monocular
    ? attempt(() => monocularDecentration(a.value, dbl.value, monocular.value))
    : pd && attempt(() => decentration(a.value, dbl.value, pd.value));
  if (inwards == null) return null;
  const isPointHeight = b && lens.height && !isSegmented(lens);
  return { in: tidy(inwards), up: isPointHeight ? tidy(lens.height.value - b.value / 2) : null };
}

const isSegmented = ({ design }: OrderedLens): boolean =>
  ['bifocal', 'trifocal', 'double'].includes(design?.value.type ?? '');

function segmentOf(order: Order, lens: OrderedLens): ComputedLens['segment'] {
  if (!isSegmented(lens)) return null;
  const { b } = order.frame;
  const drop = b && lens.height ? attempt(() => tidy(segmentDrop(lens.height?.value as number, b.value))) : null;
  return { drop, inset: insetOf(order, lens) };
}

function insetOf({ pd, nearPd }: Order, lens: OrderedLens): number | null {
  if (lens.inset) return lens.inset.value;
  const [far, near] = [pd[lens.eye], nearPd[lens.eye]];
  if (far && near) return tidy(far.value - near.value);
  const [bothFar, bothNear] = [pd.binocular, nearPd.binocular];
  return bothFar && bothNear ? attempt(() => tidy(segmentInset(bothFar.value, bothNear.value))) : null;
}
