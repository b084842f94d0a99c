/** Figures of the pair: near PD, prism of both lenses, imbalance where one reads and what levels it, size of the images. */

import {
  imbalance,
  magnificationDifference,
  minusForm,
  powerAt,
  prismAtReading,
  prismBeforeEye,
  slabOff,
} from '../../optics';
import { attempt } from '../attempt';
import { isLess, tidy } from '../exact';
import { isForNear, isProgressive, isSegmented } from '../lens-kinds';
import { EYES, type Order, type OrderedLens } from '../model';
import { ASSUMED, BORNE_IMBALANCE, READING_LEVEL } from './assumptions';
import { addInLens, type Case, casesOf, known, once, powerInFrame, powerOf } from './case';
import {
  amount,
  dioptres,
  type Known,
  mm,
  ordered,
  percent,
  prism,
  together,
  type Worked,
  work,
  worked,
} from './figure';
import { magnificationOf } from './physical-figures';
import { halfPd, insetByTurning, levelInSegments, readingLevelOf } from './places';
import { segmentAt } from './segment-figures';
import { SOURCES } from './sources';

export interface Pair {
  readonly R: Case;
  readonly L: Case;
}

/** Where none is ordered: both near halves together. */
export function nearPd(pair: Pair): Worked | null {
  if (!EYES.every((eye) => pair[eye].lens.add !== null || isForNear(pair[eye].lens))) return null;
  const halves = bothOf(pair, halfPd);
  const insets = bothOf(pair, insetByTurning);
  if (!halves || !insets) return null;
  const away = insets.R.inputs['working distance'];
  const parts = {
    'half PD R': halves.R.inputs['half PD'] ?? worked(mm(halves.R.value)),
    'half PD L': halves.L.inputs['half PD'] ?? worked(mm(halves.L.value)),
    'inset R': worked(mm(insets.R.value)),
    'inset L': worked(mm(insets.L.value)),
  };
  const inputs = together(parts, away && { 'working distance': away });
  const basis = {
    formula: 'half PD R − inset R + half PD L − inset L',
    inputs,
    source: SOURCES.convergence,
    assumed: [...insets.R.assumed, ...insets.L.assumed],
  };
  return work('near-pd', null, basis, () => ({
    nearPd: mm(halves.R.value + halves.L.value - insets.R.value - insets.L.value),
  }));
}

/** The ordered prism of both lenses together. */
export function pairPrism({ R, L }: Pair): Worked | null {
  const [right, left] = [R.lens.prism?.value, L.lens.prism?.value];
  if ((!right && !left) || R.lens.role === 'absent' || L.lens.role === 'absent') return null;
  const none = { right: 0, up: 0 };
  const before = attempt(() => ({ R: prismBeforeEye(right ?? none, 'R'), L: prismBeforeEye(left ?? none, 'L') }));
  if (!before) return null;
  const basis = {
    formula: 'horizontally base in of both added; vertically base up of R − base up of L',
    inputs: { 'prism R': ordered(prism(before.R)), 'prism L': ordered(prism(before.L)) },
    source: SOURCES.prismSums,
  };
  return work('prism-of-pair', null, basis, () => {
    const { horizontal, vertical } = imbalance(right ?? none, left ?? none);
    return { baseIn: prism(horizontal), upBeforeRight: prism(vertical) };
  });
}

/** Vertical prism between the eyes where one reads, the ordered prism apart; positive for more base up before the right eye. */
export function verticalImbalance(pair: Pair): Worked | null {
  const found = imbalanceOf(pair);
  if (!found) return null;
  const isPlain = !('segment prism R' in found.inputs);
  const basis = {
    formula: `(vertical power R − vertical power L) × reading level / 10${isPlain ? '' : ' + segment prism R − segment prism L'}`,
    inputs: found.inputs,
    source: SOURCES.readingLevel,
    assumed: found.assumed,
  };
  return work('vertical-imbalance', null, basis, () => ({ upBeforeRight: prism(found.value) }));
}

/** What is ground to level the pair: only for lenses one reads through below the centre, and beyond what is borne. */
export const slab = (pair: Pair): Worked | null => levelled(pair, 'slab-off');
export const reverseSlab = (pair: Pair): Worked | null => levelled(pair, 'reverse-slab');

function levelled(pair: Pair, what: 'slab-off' | 'reverse-slab'): Worked | null {
  const found = EYES.some((eye) => isSegmented(pair[eye].lens) || isProgressive(pair[eye].lens))
    ? imbalanceOf(pair)
    : null;
  const slabs = found && attempt(() => slabOff(found.value));
  if (!found || !slabs || !isLess(BORNE_IMBALANCE, slabs.amount)) return null;
  const isSlab = what === 'slab-off';
  const basis = {
    formula: isSlab
      ? 'vertical imbalance, base up on the lens that is less plus along the vertical'
      : 'vertical imbalance, base down on the lens that is more plus along the vertical',
    inputs: together(found.inputs, { 'vertical imbalance': worked(prism(slabs.amount)) }),
    source: SOURCES.slabOff,
    assumed: found.assumed,
  };
  return work(what, isSlab ? slabs.slab : slabs.reverse, basis, () => ({
    prism: prism({ in: 0, up: isSlab ? slabs.amount : -slabs.amount }),
  }));
}

/** By how much the image of the right eye is the larger one. */
export function imageDifference(pair: Pair): Worked | null {
  const sizes = bothOf(pair, magnificationOf);
  if (!sizes) return null;
  const basis = {
    formula: '100 × (magnification R / magnification L − 1)',
    inputs: {
      'magnification R': worked(amount(sizes.R.value, null)),
      'magnification L': worked(amount(sizes.L.value, null)),
    },
    source: SOURCES.magnification,
    assumed: [...sizes.R.assumed, ...sizes.L.assumed],
  };
  return work('magnification-difference', null, basis, () => ({
    right: percent(magnificationDifference(sizes.R.value, sizes.L.value)),
  }));
}

/**
 * Vertical prism between the eyes where one reads, prism dioptres, more base up before the right eye positive, and how
 * far below the distance centres that is, millimetres. Null where it cannot be known or does not matter.
 */
export function imbalanceAtReading(order: Order): { readonly up: number; readonly level: number } | null {
  const { R, L } = order.lenses;
  const level = levelInSegments(order) ?? READING_LEVEL;
  if (!areAlike(R, L) || !isOfBoth(R) || !isOfBoth(L)) {
    const found = imbalanceOf(casesOf(order));
    return found && { up: tidy(found.value), level: tidy(level) };
  }
  // Every order is asked for it and most pairs are alike: the figures alone, without what they rest on.
  const [right, left] = [verticalOf(order, R), verticalOf(order, L)];
  return right === null || left === null ? null : { up: tidy(betweenEyes(right, left, level)), level: tidy(level) };
}

/** Prism dioptres that two vertical powers, dioptres, make between the eyes so many millimetres below the centres. */
const betweenEyes = (right: number, left: number, level: number): number => ((right - left) * level) / 10;

/** The power along the vertical, dioptres. */
function verticalOf(order: Order, lens: OrderedLens): number | null {
  const inFrame = powerInFrame(order, lens);
  return inFrame && attempt(() => powerAt(minusForm(inFrame.power), 90));
}

/** Not a balance lens, behind which nothing is seen double, nor one looked through at its centre. */
const isOfBoth = (lens: OrderedLens): boolean => lens.role !== 'balance' && !isForNear(lens);

const imbalanceOf = ({ R }: Pair): Known<number> | null => imbalanceWith(R);

/** Kept with the right lens. */
const imbalanceWith = once(({ order }): Known<number> | null => {
  const pair = casesOf(order);
  if (!isOfBoth(pair.R.lens) || !isOfBoth(pair.L.lens)) return null;
  const powers = bothOf(pair, powerOf);
  const along = powers && attempt(() => ({ R: powerAt(powers.R.value, 90), L: powerAt(powers.L.value, 90) }));
  if (!powers || !along) return null;
  const level = readingLevelOf(pair.R);
  const vertical = { 'vertical power R': worked(dioptres(along.R)), 'vertical power L': worked(dioptres(along.L)) };
  const inputs = together(vertical, level.inputs);
  const isAlike = areAlike(pair.R.lens, pair.L.lens);
  const segments = isAlike ? null : bothOf(pair, segmentAt);
  const plain = betweenEyes(along.R, along.L, level.value);
  if (!segments) {
    const taken = isAlike ? level.assumed : [...level.assumed, ASSUMED.addsLeftOut];
    return known(plain, inputs, taken);
  }
  const ofSegment = (eye: 'R' | 'L'): number => {
    const { add, centreDrop } = segments[eye].value;
    return prismAtReading(powers[eye].value, add, level.value, centreDrop) - (along[eye] * level.value) / 10;
  };
  const parts = attempt(() => ({ R: ofSegment('R'), L: ofSegment('L') }));
  if (!parts) return null;
  return known(
    plain + parts.R - parts.L,
    together(inputs, { 'segment prism R': worked(prism(parts.R)), 'segment prism L': worked(prism(parts.L)) }),
    [...segments.R.assumed, ...segments.L.assumed],
  );
});

/** Equal adds in equal segments at one height change nothing between the eyes. */
function areAlike(R: OrderedLens, L: OrderedLens): boolean {
  const [right, left] = [R.design?.value, L.design?.value];
  const isOneDesign = right === left || JSON.stringify(right) === JSON.stringify(left);
  return isOneDesign && addInLens(R) === addInLens(L) && R.height?.value === L.height?.value;
}

function bothOf<V>(pair: Pair, of: (one: Case) => V | null): { readonly R: V; readonly L: V } | null {
  const [right, left] = [of(pair.R), of(pair.L)];
  return right === null || left === null ? null : { R: right, L: left };
}
