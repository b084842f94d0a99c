/** Power, cylinder and axis of each lens at its reference point. */
import type { Eye } from '../../grammar';
import { difference, minusForm, normalAxis, type Power } from '../../optics';
import { attempt, attemptOf } from '../attempt';
import { isLess, isSame, tidy } from '../exact';
import { isOffice } from '../lens-kinds';
import { axisLimit, judgedMeridians, type Limit, powerLimits } from '../limits';
import type { Order, OrderedLens } from '../model';
import { powerToMake } from '../power-to-make';
import type { Read, ReadValues, Step } from '../reduce';
import type { GuardBand } from '../uncertainty';
import { type Held, held, judge, repeated } from './judge';
import { type Case, classOfLens, type Measure, notJudged, notRead, type Subject } from './measure';

export function powerMeasures(one: Case): Measure[] {
  const measures: Measure[] = [];
  for (const eye of one.eyes) {
    const lens = one.order.lenses[eye];
    if (lens.role === 'made') lensMeasures(one, lens, eye, measures);
  }
  return measures;
}

/** The power a lens must show where it is read, in minus form. Null where it is not known. */
export function powerAtReference(order: Order, lens: OrderedLens): Power | 'unstated' | null {
  const target = powerToMake(order, lens);
  if (!target) return null;
  return target.kind === 'unstated' ? 'unstated' : attemptOf(minusForm, target.power);
}

/**
 * What was read at the reference point. An office lens has no distance portion; it is read at the near point, and a power
 * without a place is taken for that. A single-vision lens is one power wherever it is read.
 */
export function powerRead(values: ReadValues, lens: OrderedLens): Read<Power> | null {
  const [plain, near] = [values.power[lens.eye] ?? null, values.nearPower[lens.eye] ?? null];
  if (isOffice(lens)) return near ?? plain;
  const type = lens.design?.value.type ?? 'single-vision';
  return plain ?? (type === 'single-vision' ? near : null);
}

function lensMeasures({ order, values, set, guard }: Case, lens: OrderedLens, eye: Eye, measures: Measure[]): void {
  const ordered = powerAtReference(order, lens);
  const read = powerRead(values, lens);
  // No pair is accepted on one lens: a power that is missing, unreadable or without its addition leaves the other waiting.
  if (ordered === null || ordered === 'unstated') {
    measures.push(unjudged(eye, read, ordered === null ? 'power-missing' : 'verification-missing'));
    return;
  }
  const slots = meridianSlots(ordered);
  const strongest = slots[0];
  if (!read) {
    measures.push(notRead({ quantity: 'power', eye, meridian: 1, unit: 'D' }, strongest.of(ordered)));
    measures.push(notRead({ quantity: 'cylinder', eye, unit: 'D' }, ordered.cylinder));
    if (ordered.cylinder !== 0) measures.push(notRead({ quantity: 'axis', eye, unit: 'deg' }, ordered.axis));
    return;
  }
  const assumed = isOffice(lens) && read === values.power[eye] ? 'near-point-assumed' : null;
  const lensClass = classOfLens(lens);
  const judged = judgedMeridians(set, lensClass) === 'each-meridian' ? slots : [strongest];
  let cylinderLimit: Limit | null = null;
  for (const slot of judged) {
    const limits = powerLimits(set, lensClass, strongest.of(ordered), slot.of(ordered), ordered.cylinder);
    cylinderLimit = limits?.cylinder ?? null;
    const subject: Subject = { quantity: 'power', eye, meridian: slot === strongest ? 1 : 2, unit: 'D' };
    const figure = against(slot, ordered, read, limits?.meridian ?? null);
    figure.assumed = assumed;
    measures.push(judge(subject, figure, guard));
  }
  if (cylinderLimit || ordered.cylinder !== 0) {
    const figure = against(CYLINDER, ordered, read, cylinderLimit);
    // Where no axis is judged, cylinders that lie across each other would cancel without a word.
    if (ordered.cylinder === 0 && read.all.length > 1) figure.spread = crossed(read.all);
    if (read.steps.length > 0) figure.steps = read.steps.filter(isOfCylinder);
    measures.push(judge({ quantity: 'cylinder', eye, unit: 'D' }, figure, guard));
  }
  const axis = axisMeasure(ordered, read, axisLimit(set, lensClass, ordered.cylinder), eye, guard);
  if (axis) measures.push(axis);
  if (read.all.length > 1) leaveTogether(measures, eye);
}

/** Repeats are put together as lenses, so where one of their figures disagrees the mean says nothing of the others either. */
function leaveTogether(measures: Measure[], eye: Eye): void {
  const own = measures.filter((one) => one.eye === eye);
  if (!own.some(({ because }) => because === 'spread')) return;
  for (const one of own) {
    if (one.because === 'spread') continue;
    measures[measures.indexOf(one)] = { ...one, outcome: 'not-judged', because: 'beside-spread', tooCoarse: false };
  }
}

/** The largest cylinder that two of the lenses would have between them, dioptres. */
function crossed(lenses: readonly Power[]): number {
  let most = 0;
  for (const a of lenses)
    for (const b of lenses) most = Math.max(most, Math.abs(attempt(() => difference(a, b).cylinder) ?? 0));
  return tidy(most);
}

/** One figure of a lens, ordered and read, with its repeats. */
function against({ of }: Slot, ordered: Power, read: Read<Power>, limit: Limit | null): Held {
  const wanted = of(ordered);
  const value = of(read.value);
  const figure = held(read, wanted, value, value - wanted, limit);
  figure.all = repeated(read.all, (lens) => ({ read: of(lens), deviation: of(lens) - wanted }));
  return figure;
}

const unjudged = (eye: Eye, read: Read<Power> | null, because: string): Measure =>
  notJudged({ quantity: 'power', eye, meridian: 1, unit: 'D' }, read, because);

/** One figure of a lens written in minus form: a principal meridian, or the cylinder. */
interface Slot {
  readonly of: (lens: Power) => number;
}

const SPHERE: Slot = { of: ({ sphere }) => sphere };
const CYLINDER: Slot = { of: ({ cylinder }) => cylinder };
const CROSSED: Slot = { of: ({ sphere, cylinder }) => tidy(sphere + cylinder) };

/**
 * The two principal meridians, the one of higher absolute power first and the more plus of equals. In minus form the
 * sphere is the more plus one. The read meridian is the one that plays the same part in the same form, so a lens
 * whose axis is off fails on the axis and not on its powers as well.
 */
export function meridianSlots(ordered: Power): readonly [Slot, Slot] {
  const [sphere, crossed] = [Math.abs(SPHERE.of(ordered)), Math.abs(CROSSED.of(ordered))];
  return isSame(sphere, crossed) || isLess(crossed, sphere) ? [SPHERE, CROSSED] : [CROSSED, SPHERE];
}

/** An axis exists only where both lenses have a cylinder. */
function axisMeasure(
  ordered: Power,
  read: Read<Power>,
  limit: Limit | null,
  eye: Eye,
  guard: GuardBand,
): Measure | null {
  if (ordered.cylinder === 0) return null;
  const toric = read.all.flatMap((lens, at) =>
    lens.cylinder === 0 ? [] : [{ axis: lens.axis, place: read.places[at] ?? read.place }],
  );
  const [first, ...others] = toric;
  // Cylinders that cancel leave no axis in their mean, and it is theirs that disagree.
  const axis = read.value.cylinder === 0 ? first?.axis : read.value.axis;
  if (!first || axis === undefined || (read.value.cylinder === 0 && others.length === 0)) return null;
  const figure = held(read, ordered.axis, axis, turn(axis, ordered.axis), limit);
  if (read.steps.length > 0) figure.steps = read.steps.filter(({ step }) => step === 'mean');
  if (read.all.length > 1) {
    // Counted on from the first, so that two axes on either side of the crossed one are not half a turn apart.
    const from = turn(first.axis, ordered.axis);
    figure.places = toric.map(({ place }) => place);
    figure.all = repeated(toric, (one) => ({ read: one.axis, deviation: from + turn(one.axis, first.axis) }));
  }
  return judge({ quantity: 'axis', eye, unit: 'deg' }, figure, guard);
}

/** From one axis to another the short way round, degrees. */
function turn(to: number, from: number): number {
  const turned = normalAxis(to - from);
  return turned > 90 ? turned - 180 : turned;
}

/** The zero error drops out of a cylinder, and an eighth of the sphere is not its business. */
const isOfCylinder = (step: Step): boolean =>
  step.step !== 'zero' && !(step.step === 'eighth' && step.part === 'sphere');
