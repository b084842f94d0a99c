/** Figures of the ordered prism of one lens: put together, made by decentration, or made from one. */

import { decentrationForPrism, prentice, principalMeridians, prismBeforeEye, resultant } from '../../optics';
import { attempt } from '../attempt';
import { isSame } from '../exact';
import { isMade, isSingleVision } from '../lens-kinds';
import { type Case, powerOf } from './case';
import { type Basis, degrees, mm, ordered, prism, type Refusal, together, type Worked, work } from './figure';
import { SOURCES } from './sources';

/** Amount and base of the ordered prism as one, the base counter-clockwise from the examiner’s right. */
export function onePrism({ lens, eye }: Case): Worked | null {
  const stated = lens.prism?.value;
  if (!stated || isNothing(stated)) return null;
  const before = attempt(() => prismBeforeEye(stated, eye));
  if (!before) return null;
  const basis = {
    formula: '√(in² + up²); base by the quadrant, 0 at the examiner’s right',
    inputs: { prism: ordered(prism(before)) },
    source: SOURCES.prismSums,
  };
  return work('prism-resultant', eye, basis, () => {
    const { amount, base } = resultant(stated);
    return { amount: prism(amount), base: degrees(base) };
  });
}

/** The prism that an ordered decentration makes at the middle of the uncut lens. */
export function byDecentration(one: Case): Worked | null {
  const { lens, eye } = one;
  const power = powerOf(one);
  if (!lens.decentre || !power) return null;
  const { in: inwards, up } = lens.decentre.value;
  const basis = {
    formula: 'power × decentration / 10, along both directions',
    inputs: together(power.inputs, { decentration: ordered(mm({ in: inwards, up })) }),
    source: SOURCES.prismByDecentration,
  };
  return work('prism-by-decentration', eye, basis, () => {
    const centre = { right: eye === 'R' ? inwards : -inwards, up };
    return { prism: prism(prismBeforeEye(prentice(power.value, centre), eye)) };
  });
}

/** How far the optical centre of a single-vision lens has to move for the ordered prism; refused where no move makes it. */
export function forPrism(one: Case): Worked | null {
  const { lens, eye } = one;
  const [stated, power] = [(lens.verification?.prism ?? lens.prism)?.value, powerOf(one)];
  if (!isMade(lens) || !isSingleVision(lens) || !stated || isNothing(stated) || !power) return null;
  const before = attempt(() => prismBeforeEye(stated, eye));
  if (!before) return null;
  const basis: Basis = {
    formula: '10 × prism / power along each principal meridian',
    inputs: together(power.inputs, { prism: ordered(prism(before)) }),
    source: SOURCES.prismByDecentration,
  };
  const moved = work('decentration-for-prism', eye, basis, () => {
    const { right, up } = decentrationForPrism(power.value, stated);
    // A displacement names its directions as a prism does, and may be as large as one.
    return { moved: mm(prismBeforeEye({ right, up }, eye)) };
  });
  return (
    moved ??
    refused(
      one,
      basis,
      attempt(() => principalMeridians(power.value).some((one) => isSame(one.power, 0))),
    )
  );
}

function refused({ eye }: Case, basis: Basis, isFlat: boolean | null): Worked | null {
  if (isFlat === null) return null;
  const why: Refusal = isFlat ? 'plano-meridian' : 'too-far';
  const empty = work('decentration-for-prism', eye, basis, () => ({}));
  return empty && { ...empty, refused: why };
}

const isNothing = ({ right, up }: { readonly right: number; readonly up: number }): boolean =>
  isSame(right, 0) && isSame(up, 0);
