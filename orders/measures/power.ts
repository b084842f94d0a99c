/** Power, cylinder and axis of each lens at its reference point. */
import type { Eye } from '../../grammar';
import { minusForm, normalAxis, type Power } from '../../optics';
import { attempt } from '../attempt';
import { isLess, isSame, tidy } from '../exact';
import { axisLimit, judgedMeridians, type Limit, powerLimits } from '../limits';
import { EYES, type Order, type OrderedLens } from '../model';
import { powerToMake } from '../power-to-make';
import type { Read, ReadValues, Step } from '../reduce';
import type { GuardBand } from '../uncertainty';
import { type Case, classOfLens, type Held, judge, type Measure, notJudged, notRead } from './measure';

export function powerMeasures(one: Case): Measure[] {
  return EYES.flatMap((eye) => {
    const lens = one.order.lenses[eye];
    return lens.role === 'made' ? lensMeasures(one, lens, eye) : [];
  });
}

/** The power a lens must show where it is read, in minus form. Null where it is not known. */
export function powerAtReference(order: Order, lens: OrderedLens): Power | 'unstated' | null {
  const target = powerToMake(order, lens);
  if (!target) return null;
  if (target.kind === 'unstated') return 'unstated';
  return attempt(() => minusForm(target.power));
}

export const isOffice = ({ design }: OrderedLens): boolean => design?.value.type === 'office';

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

function lensMeasures({ order, values, set, guard }: Case, lens: OrderedLens, eye: Eye): Measure[] {
  const ordered = powerAtReference(order, lens);
  const read = powerRead(values, lens);
  // No pair is accepted on one lens: a power that is missing, unreadable or without its addition leaves the other waiting.
  if (ordered === null) return [unjudged(eye, read, 'power-missing')];
  if (ordered === 'unstated') return [unjudged(eye, read, 'verification-missing')];
  const slots = meridianSlots(ordered);
  const strongest = slots[0];
  if (!read) {
    const list = [
      notRead({ quantity: 'power', eye, meridian: 1, unit: 'D' }, strongest.of(ordered)),
      notRead({ quantity: 'cylinder', eye, unit: 'D' }, ordered.cylinder),
    ];
    return ordered.cylinder === 0 ? list : [...list, notRead({ quantity: 'axis', eye, unit: 'deg' }, ordered.axis)];
  }
  const assumed = isOffice(lens) && read === values.power[eye] ? 'near-point-assumed' : null;
  const lensClass = classOfLens(lens);
  const judged = judgedMeridians(set, lensClass) === 'each-meridian' ? slots : [strongest];
  const measures: Measure[] = [];
  let cylinderLimit: Limit | null = null;
  for (const [at, { of }] of judged.entries()) {
    const limits = powerLimits(set, lensClass, strongest.of(ordered), of(ordered), ordered.cylinder);
    cylinderLimit = limits?.cylinder ?? null;
    const subject = { quantity: 'power', eye, meridian: at === 0 ? 1 : 2, unit: 'D' } as const;
    measures.push(judge(subject, { limit: limits?.meridian ?? null, assumed, ...against(of, ordered, read) }, guard));
  }
  if (cylinderLimit || ordered.cylinder !== 0) {
    const from = { ...read, steps: read.steps.filter(isOfCylinder) };
    const held = { limit: cylinderLimit, ...against(({ cylinder }) => cylinder, ordered, from) };
    measures.push(judge({ quantity: 'cylinder', eye, unit: 'D' }, held, guard));
  }
  const axis = axisMeasure(ordered, read, axisLimit(set, lensClass, ordered.cylinder), eye, guard);
  if (axis) measures.push(axis);
  return measures;
}

/** One figure of a lens, ordered and read, with its repeats. */
export function against(of: (lens: Power) => number, ordered: Power, read: Read<Power>): Omit<Held, 'limit'> {
  return {
    from: read,
    ordered: of(ordered),
    read: of(read.value),
    deviation: of(read.value) - of(ordered),
    all: read.all.map((lens) => ({ read: of(lens), deviation: of(lens) - of(ordered) })),
  };
}

const unjudged = (eye: Eye, read: Read<Power> | null, because: string): Measure =>
  notJudged({ quantity: 'power', eye, meridian: 1, unit: 'D' }, read, because);

/** One principal meridian of a lens written in minus form. */
interface Slot {
  readonly of: (lens: Power) => number;
}

const SPHERE: Slot = { of: ({ sphere }) => sphere };
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
  if (ordered.cylinder === 0 || read.value.cylinder === 0) return null;
  const offset = (axis: number): number => {
    const turned = normalAxis(axis - ordered.axis);
    return turned > 90 ? turned - 180 : turned;
  };
  const toric = read.all.flatMap((lens, at) =>
    lens.cylinder === 0 ? [] : [{ axis: lens.axis, place: read.places[at] ?? read.place }],
  );
  const held = {
    from: {
      ...read,
      steps: read.steps.filter(({ step }) => step === 'mean'),
      places: toric.map(({ place }) => place),
    },
    ordered: ordered.axis,
    read: read.value.axis,
    deviation: offset(read.value.axis),
    all: toric.map(({ axis }) => ({ read: axis, deviation: offset(axis) })),
    limit,
  };
  return judge({ quantity: 'axis', eye, unit: 'deg' }, held, guard);
}

/** The zero error drops out of a cylinder, and an eighth of the sphere is not its business. */
const isOfCylinder = (step: Step): boolean =>
  step.step !== 'zero' && !(step.step === 'eighth' && step.part === 'sphere');
