/** Adds of multifocals and progressives, the intermediate of a trifocal, the degression of an office lens. */
import type { Power } from '../../optics';
import { tidy } from '../exact';
import { isOffice } from '../lens-kinds';
import { addLimit } from '../limits';
import { EYES, type OrderedLens } from '../model';
import type { Read } from '../reduce';
import { addAsRead } from './add-as-read';
import { surfaceDecides, surfaceOf } from './add-surface';
import { figureAgainst, judge } from './judge';
import { type Case, classOfLens, type Measure, notJudged, notRead, type Quantity } from './measure';
import { meridianSlots, powerAtReference } from './power';

export function addMeasures(one: Case): Measure[] {
  const measures: Measure[] = [];
  for (const eye of EYES) {
    const lens = one.order.lenses[eye];
    // What nobody named may have a segment all the same: an add that is ordered is called for.
    if (lens.role !== 'made' || lens.design?.value.type === 'single-vision') continue;
    if (isOffice(lens)) measures.push(...officeMeasures(one, lens));
    else measures.push(...addMeasure(one, lens), ...upperMeasure(one, lens), ...intermediateMeasure(one, lens));
  }
  return measures;
}

/** Only what is ordered is called for, and single vision has none that could be read. */
function addMeasure(one: Case, lens: OrderedLens): Measure[] {
  const { values } = one;
  const ordered = lens.verification?.add ?? lens.add;
  if (!ordered) return [];
  const measured = addAsRead(values, lens.eye) ?? byNearPower(one, lens);
  const engraved = values.engravedAdd[lens.eye] ?? null;
  // What a progressive says of itself counts as read; a segment carries no such mark.
  if (measured || !engraved || classOfLens(lens) === 'progressive')
    return [figure(one, lens, 'add', ordered.value, measured ?? engraved)];
  return [{ ...figure(one, lens, 'add', ordered.value, null), because: 'engraved' }];
}

/** Two powers of one lens at two points: the add is their difference, as it is with two drum positions. */
function byNearPower({ values }: Case, { eye }: OrderedLens): Read<number> | null {
  const [far, near] = [values.power[eye], values.nearPower[eye]];
  if (!far || !near || far.reading !== near.reading) return null;
  const [from, to] = [far.value.sphere, near.value.sphere];
  const result = tidy(to - from);
  const steps = [{ step: 'difference', from, to, result, surface: null }] as const;
  return { ...near, value: result, steps, all: [result], places: [near.place] };
}

/** The upper one of two segments has an add of its own where one is ordered. */
function upperMeasure(one: Case, lens: OrderedLens): Measure[] {
  if (!lens.upperAdd) return [];
  return [figure(one, lens, 'upper-add', lens.upperAdd.value, one.values.upperAdd[lens.eye] ?? null)];
}

function intermediateMeasure(one: Case, lens: OrderedLens): Measure[] {
  const design = lens.design?.value;
  const ordered = lens.intermediate?.value ?? design?.intermediate ?? null;
  if (ordered === null || design?.type === 'progressive') return [];
  return [figure(one, lens, 'intermediate', ordered, one.values.figures.intermediate?.[lens.eye] ?? null)];
}

/**
 * An office lens is weaker towards its top by the degression: at the top it has the near power less the degression. The
 * difference is read, and an engraved add is looked at where there is one.
 */
function officeMeasures(one: Case, lens: OrderedLens): Measure[] {
  const { values, order } = one;
  const { eye } = lens;
  const ordered = lens.design?.value.degression ?? null;
  const add = lens.verification?.add ?? lens.add;
  const adds = addAsRead(values, eye) ?? values.engravedAdd[eye];
  const measures = add && adds ? [figure(one, lens, 'add', add.value, adds)] : [];
  if (ordered === null) return measures;
  const near = powerAtReference(order, lens);
  const top = values.topPower[eye];
  if (!top || near === null || near === 'unstated')
    return [...measures, figure(one, lens, 'degression', ordered, null)];
  const { of } = meridianSlots(near)[0];
  const from = values.nearPower[eye]?.value ?? values.power[eye]?.value ?? near;
  const weaker = (lensAtTop: Power): number => tidy(of(from) - of(lensAtTop));
  const value = weaker(top.value);
  return [...measures, figure(one, lens, 'degression', ordered, { ...top, value, all: top.all.map(weaker) })];
}

/** Degressions and intermediates are held against the limit of adds: they are additions too. */
function figure(
  { set, guard, order }: Case,
  lens: OrderedLens,
  quantity: Quantity,
  ordered: number,
  read: Read<number> | null,
): Measure {
  const subject = { quantity, eye: lens.eye, unit: 'D' } as const;
  if (!read) return notRead(subject, ordered);
  const isEngraved = read.steps.some(({ step }) => step === 'engraved');
  // A lens compensated for its position of wear reads another add than was ordered, and is right all the same.
  if (order.compensation?.value === 'by-maker' && !lens.verification && !isEngraved)
    return notJudged(subject, read, 'verification-missing');
  const measure = judge(subject, figureAgainst(ordered, read, addLimit(set, classOfLens(lens), ordered)), guard);
  if (quantity !== 'add' || surfaceOf(read) !== 'back-vertex' || !surfaceDecides(order, measure)) return measure;
  // Read from the wrong side it says nothing as near to its limit as that; from the right side it would say otherwise.
  return { ...measure, outcome: 'not-judged', because: 'other-surface' };
}
