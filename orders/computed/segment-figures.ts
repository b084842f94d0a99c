/** Figures of a segment and of the point one reads through: jump, displacement, the ring of the target, colour. */

import {
  type EyePrism,
  imageJump,
  powerAt,
  prentice,
  prismAtReading,
  prismBeforeEye,
  segmentPrism,
  transverseChromaticAberration,
} from '../../optics';
import { attempt } from '../attempt';
import { hasPlainSegment, isForNear, isProgressive, isSegmented } from '../lens-kinds';
import { abbeOf, addOf, type Case, known, once, powerOf } from './case';
import { dioptres, type Input, type Known, mm, ordered, prism, together, type Worked, work, worked } from './figure';
import { dropOf, insetByTurning, orderedInset, readingLevelOf, segmentCentreOf } from './places';
import { SOURCES } from './sources';

/** At the top of the segment; distance power and distance centre have no part in it. */
export function jump(one: Case): Worked | null {
  const [add, centre] = [addOf(one), segmentCentreOf(one)];
  if (!add || !centre) return null;
  const basis = {
    formula: 'add × centre of the segment below its top / 10, base towards that centre',
    inputs: together(add.inputs, centre.inputs),
    source: SOURCES.imageJump,
    assumed: centre.assumed,
  };
  return work('image-jump', one.eye, basis, () => ({ jump: prism(vertical(imageJump(add.value, centre.value))) }));
}

/** The whole vertical prism of one lens where one reads: of the distance portion and of the segment. */
export function displacement(one: Case): Worked | null {
  const at = segmentAt(one);
  const power = powerOf(one);
  if (!at || !power) return null;
  const along = attempt(() => powerAt(power.value, 90));
  if (along === null) return null;
  const { add, level, centreDrop } = at.value;
  const basis = {
    formula:
      '(vertical power × reading level + add × (reading level − centre of the segment below the distance centre)) / 10, base up',
    inputs: together({ 'vertical power': worked(dioptres(along)) }, at.inputs),
    source: SOURCES.readingLevel,
    assumed: at.assumed,
  };
  return work('displacement', one.eye, basis, () => ({
    ofDistance: prism(vertical(prismAtReading(power.value, 0, level, centreDrop))),
    ofSegment: prism(vertical(segmentPrism(add, centreDrop - level))),
    whole: prism(vertical(prismAtReading(power.value, add, level, centreDrop))),
  }));
}

/** The ring on which the target stands at the reading point, and the prism it shows; the ordered prism counts in. */
export function ring(one: Case): Worked | null {
  const at = nearPrismOf(one);
  if (!at || !isSegmented(one.lens)) return null;
  const basis = {
    formula:
      'power × distance from its centre / 10, along both directions, + add × distance from the centre of the segment / 10; ring: √(in² + up²)',
    inputs: at.inputs,
    source: SOURCES.prismByDecentration,
    assumed: at.assumed,
  };
  return work('ring-in-segment', one.eye, basis, () => ({
    prism: prism(at.value),
    ring: prism(Math.hypot(at.value.in, at.value.up)),
  }));
}

/** Where one reads. Not for a lens that is looked through at its reference point, nor for one whose power changes. */
export function colour(one: Case): Worked | null {
  const [at, abbe] = [nearPrismOf(one), abbeOf(one)];
  if (!at || !abbe) return null;
  const amount = Math.hypot(at.value.in, at.value.up);
  const basis = {
    formula: 'prism at the near point / Abbe number',
    inputs: together(
      { inset: at.inputs.inset as Input, 'reading level': at.inputs['reading level'] as Input },
      { 'prism at the near point': worked(prism(amount)) },
      abbe.inputs,
    ),
    source: SOURCES.chromatic,
    assumed: at.assumed,
  };
  return work('chromatic-aberration', one.eye, basis, () => ({
    amount: prism(transverseChromaticAberration(amount, abbe.value)),
  }));
}

/** Add, reading level and depth of the segment’s centre, for a segment whose place and centre are known. */
export const segmentAt = once(
  (one): Known<{ readonly add: number; readonly level: number; readonly centreDrop: number }> | null => {
    const [add, drop, centre, level] = [addOf(one), dropOf(one), segmentCentreOf(one), readingLevelOf(one)];
    if (!add || !drop || !centre) return null;
    const centreDrop = drop.value + centre.value;
    const inputs = together(
      add.inputs,
      { drop: worked(mm(drop.value)) },
      centre.inputs,
      { 'centre of the segment below the distance centre': worked(mm(centreDrop)) },
      level.inputs,
    );
    return known({ add: add.value, level: level.value, centreDrop }, inputs, [...centre.assumed, ...level.assumed]);
  },
);

/** Prism before the eye at the point one reads through, the ordered prism included. */
const nearPrismOf = once((one): Known<EyePrism> | null => {
  const { lens, eye } = one;
  if (isForNear(lens) || isProgressive(lens)) return null;
  const [power, inset] = [powerOf(one), orderedInset(one) ?? insetByTurning(one)];
  const segment = isSegmented(lens) ? segmentAt(one) : null;
  if (!power || !inset || (isSegmented(lens) && !(segment && hasPlainSegment(lens)))) return null;
  const level = readingLevelOf(one);
  const stated = (lens.verification?.prism ?? lens.prism)?.value;
  const found = attempt(() => {
    const outwards = eye === 'R' ? -inset.value : inset.value;
    const { right, up } = prentice(power.value, { right: outwards, up: level.value });
    const add = segment ? segmentPrism(segment.value.add, segment.value.centreDrop - level.value) : 0;
    return prismBeforeEye({ right: right + (stated?.right ?? 0), up: up + add + (stated?.up ?? 0) }, eye);
  });
  if (!found) return null;
  const inputs = together(
    power.inputs,
    { inset: inset.inputs.inset ?? worked(mm(inset.value)) },
    segment?.inputs ?? level.inputs,
    stated && { 'ordered prism': ordered(prism(prismBeforeEye(stated, eye))) },
  );
  const taken = [...power.assumed, ...inset.assumed, ...(segment?.assumed ?? level.assumed)];
  return known(found, inputs, taken);
});

const vertical = (up: number): EyePrism => ({ in: 0, up });
