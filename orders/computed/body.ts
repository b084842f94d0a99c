/** Front surface, index and centre thickness of a lens: what its physical figures rest on. */

import {
  type BoxedShape,
  centreThicknessFor,
  type Displacement,
  type LensToMake,
  outlinePoints,
  prismBeforeEye,
  sphericalEquivalent,
  surfacePower,
} from '../../optics';
import { attempt } from '../attempt';
import { isProgressive } from '../lens-kinds';
import { ASSUMED, USUAL_CENTRE, USUAL_EDGE } from './assumptions';
import { type Case, indexOf, known, once, powerOf } from './case';
import { assumed, dioptres, type Inputs, type Known, length, mm, ordered, prism, together, worked } from './figure';
import { inwardsOf, raiseOf } from './places';

export interface Body {
  /** True power of the front surface, dioptres. */
  readonly front: number;
  readonly index: number;
  /** At the optical centre, millimetres. */
  readonly centre: number;
  /** The thickness elsewhere that the centre was solved for. */
  readonly elsewhere: Inputs;
}

/** A lens with its shape; the optical centre from the boxed centre, examiner’s right and up positive. */
export interface Cut {
  readonly lens: LensToMake;
  readonly shape: BoxedShape;
  readonly opticalCentre: Displacement;
}

/** Degrees between the points of the outline at which the edge is looked at. */
const STEP = 4;

/** The ordered centre thickness; or that which the ordered edge needs; or else the usual one, and said. */
export const bodyOf = once((one): Known<Body> | null => {
  const surface = frontOf(one);
  if (!surface) return null;
  const { front, index } = surface.value;
  const centre = orderedCentre(one) ?? centreForEdge(one) ?? usualCentre(one);
  if (!centre) return null;
  const { 'centre thickness': own, ...elsewhere } = centre.inputs;
  const inputs = together(surface.inputs, own && { 'centre thickness': own });
  return known({ front, index, centre: centre.value, elsewhere }, inputs, [...surface.assumed, ...centre.assumed]);
});

/** True power of the front surface, from the base curve as it is marked. */
const frontOf = once((one): Known<{ readonly front: number; readonly index: number }> | null => {
  const { baseCurve } = one.lens;
  const index = indexOf(one);
  if (!baseCurve || !index || isProgressive(one.lens)) return null;
  const front = attempt(() => surfacePower(baseCurve.value, index.value));
  if (front === null) return null;
  const inputs = together({ 'base curve': ordered(dioptres(baseCurve.value)) }, index.inputs, {
    'front surface': worked(dioptres(front)),
  });
  return known({ front, index: index.value }, inputs, [ASSUMED.baseCurveIndex]);
});

/** The lens in its frame, where power, surface, layout and shape are all known. */
export const cutOf = once((one): Known<Cut> | null => {
  const { order, lens, eye } = one;
  const [surface, power, inwards] = [frontOf(one), powerOf(one), inwardsOf(one)];
  const { a, b, ed } = order.frame;
  if (!surface || !power || !inwards || !a || !b || !ed) return null;
  const raise = raiseOf(one);
  const worn = (lens.verification?.prism ?? lens.prism)?.value;
  const inputs = together(
    power.inputs,
    surface.inputs,
    { A: length(a), B: length(b), ED: length(ed), decentration: worked(mm(inwards.value)) },
    raise && { raise: worked(mm(raise.value)) },
    worn && { prism: ordered(prism(prismBeforeEye(worn, eye))) },
  );
  const cut: Cut = {
    lens: { power: power.value, ...surface.value, ...(worn ? { prism: worn } : {}) },
    shape: { a: a.value, b: b.value, ed: ed.value },
    opticalCentre: { right: eye === 'R' ? inwards.value : -inwards.value, up: raise?.value ?? 0 },
  };
  return known(cut, inputs, [
    ...power.assumed,
    ...surface.assumed,
    ...(raise ? [] : [ASSUMED.centreOnDatum]),
    ASSUMED.outline,
    ASSUMED.sphericalFront,
  ]);
});

export const edgeOf = ({ shape, opticalCentre }: Cut): readonly Displacement[] =>
  outlinePoints(shape, opticalCentre, STEP);

function orderedCentre({ lens }: Case): Known<number> | null {
  const { centre } = lens.thickness;
  return centre && known(centre.value, { 'centre thickness': length(centre) });
}

/** An ordered edge holds at its thinnest point; an ordered least thickness holds there and at the centre. */
function centreForEdge(one: Case): Known<number> | null {
  const { edge, min } = one.lens.thickness;
  if (!edge && !min) return null;
  const least = { edge: Math.max(edge?.value ?? 0, min?.value ?? 0), centre: min?.value ?? 0 };
  const inputs = together(edge && { 'edge thickness': length(edge) }, min && { 'least thickness': length(min) });
  return solved(one, least, inputs, []);
}

function usualCentre(one: Case): Known<number> | null {
  const power = powerOf(one);
  if (!power || one.lens.thickness.edge || one.lens.thickness.min) return null;
  const equivalent = attempt(() => sphericalEquivalent(power.value));
  if (equivalent === null) return null;
  if (equivalent <= 0) {
    return known(USUAL_CENTRE, { 'centre thickness': assumed(mm(USUAL_CENTRE)) }, [ASSUMED.usualCentre]);
  }
  return solved(one, { edge: USUAL_EDGE, centre: 0 }, { 'edge thickness': assumed(mm(USUAL_EDGE)) }, [
    ASSUMED.usualEdge,
  ]);
}

function solved(
  one: Case,
  least: { readonly edge: number; readonly centre: number },
  inputs: Inputs,
  taken: readonly string[],
): Known<number> | null {
  const cut = cutOf(one);
  const centre = cut && attempt(() => centreThicknessFor(cut.value.lens, edgeOf(cut.value), least));
  if (!cut || centre === null) return null;
  return known(centre, together(inputs, { 'centre thickness': worked(mm(centre)) }), [...taken, ...cut.assumed]);
}
