/** Figures of the lens as a body: thickness, weight, curve, magnification, reflectance. */

import {
  backSurfaceFor,
  baseCurveByBoddy,
  baseCurveByVogel,
  edgeThickness,
  reflectance,
  spectacleMagnification,
  sphericalEquivalent,
  volume,
  weight,
  within,
} from '../../optics';
import { attempt } from '../attempt';
import { isMade, isSegmented } from '../lens-kinds';
import { ASSUMED, TO_ENTRANCE_PUPIL } from './assumptions';
import { bodyOf, type Cut, cutOf, edgeOf } from './body';
import { addOf, type Case, densityOf, indexOf, known, once, powerOf } from './case';
import {
  amount,
  assumed,
  dioptres,
  type Known,
  length,
  mm,
  percent,
  together,
  type Worked,
  work,
  worked,
} from './figure';
import { SOURCES } from './sources';

/** Centre, thinnest and thickest edge of the lens in its frame. */
export function thickness(one: Case): Worked | null {
  const found = cutAndCentre(one);
  if (!found) return null;
  const { cut, centre } = found.value;
  const basis = {
    formula: 'edge = centre + sag of the back − sag of the front, all round the outline',
    inputs: found.inputs,
    source: SOURCES.thickness,
    assumed: found.assumed,
  };
  return work('thickness', one.eye, basis, () => {
    const { thinnest, thickest } = edgeThickness({ ...cut.lens, centre }, edgeOf(cut));
    return {
      centre: mm(centre),
      thinnestEdge: mm(within('edge thickness', thinnest.thickness, { least: 0 })),
      thickestEdge: mm(thickest.thickness),
    };
  });
}

export function mass(one: Case): Worked | null {
  const [found, density] = [cutAndCentre(one), densityOf(one)];
  if (!found || !density) return null;
  const { cut, centre } = found.value;
  const basis = {
    formula: 'volume within the outline × density',
    inputs: together(found.inputs, density.inputs),
    source: SOURCES.weight,
    assumed: found.assumed,
  };
  return work('weight', one.eye, basis, () => {
    const cubic = volume({ ...cut.lens, centre }, cut.shape, cut.opticalCentre);
    return { weight: amount(weight(cubic, density.value), 'g') };
  });
}

/** A nominal front curve for the power to be made. */
export function baseCurve(one: Case): Worked | null {
  const equivalent = equivalentOf(one);
  if (!equivalent) return null;
  const isPlus = equivalent.value > 0;
  const basis = {
    formula: isPlus ? 'spherical equivalent + 6' : 'spherical equivalent / 2 + 6',
    inputs: equivalent.inputs,
    source: SOURCES.vogel,
  };
  return work('base-curve-advice', one.eye, basis, () => ({ curve: dioptres(baseCurveByVogel(equivalent.value)) }));
}

/** The same for a digitally made lens, which counts the add in. */
export function digitalBaseCurve(one: Case): Worked | null {
  const equivalent = equivalentOf(one);
  if (!equivalent) return null;
  const isPlus = equivalent.value > 0;
  const add = addOf(one);
  const basis = {
    formula: isPlus
      ? `3.50 ${add ? '+ add / 2 ' : ''}+ spherical equivalent`
      : `4.25 + ${add ? '(spherical equivalent + add)' : 'spherical equivalent'} / 2`,
    inputs: together(equivalent.inputs, add?.inputs),
    source: SOURCES.boddy,
  };
  return work('base-curve-advice-digital', one.eye, basis, () => ({
    curve: dioptres(baseCurveByBoddy(equivalent.value, add?.value ?? 0)),
  }));
}

/** Of the mean power, since a cylinder magnifies each meridian by itself. */
export function magnification(one: Case): Worked | null {
  const found = magnificationOf(one);
  if (!found) return null;
  const basis = {
    formula:
      '100 × (1 / (1 − thickness / index × front surface) × 1 / (1 − (vertex + to the entrance pupil) × spherical equivalent) − 1)',
    inputs: found.inputs,
    source: SOURCES.magnification,
    assumed: found.assumed,
  };
  return work('magnification', one.eye, basis, () => ({
    gain: percent(100 * (found.value - 1)),
  }));
}

/** Spectacle magnification, no unit, with what it rests on. */
export const magnificationOf = once((one): Known<number> | null => {
  const [equivalent, body] = [equivalentOf(one), bodyOf(one)];
  const { vertex } = one.order.asWorn;
  if (!equivalent || !body || !vertex) return null;
  const { front, index, centre } = body.value;
  const found = attempt(() => {
    const back = backSurfaceFor(equivalent.value, front, centre, index);
    return spectacleMagnification({ front, back, thickness: centre, index }, vertex.value + TO_ENTRANCE_PUPIL);
  });
  if (found === null) return null;
  const inputs = together(equivalent.inputs, body.inputs, {
    vertex: length(vertex),
    'to the entrance pupil': assumed(mm(TO_ENTRANCE_PUPIL)),
  });
  return known(found, inputs, [...body.assumed, ASSUMED.entrancePupil]);
});

/** The share of light that each uncoated surface throws back. */
export function reflected(one: Case): Worked | null {
  const index = indexOf(one);
  if (!index) return null;
  const basis = {
    formula: '100 × ((index − 1) / (index + 1))², each surface uncoated',
    inputs: index.inputs,
    source: SOURCES.reflectance,
  };
  return work('reflectance', one.eye, basis, () => ({
    surface: percent(100 * reflectance(index.value)),
  }));
}

const equivalentOf = once((one): Known<number> | null => {
  const power = isMade(one.lens) ? powerOf(one) : null;
  const equivalent = power && attempt(() => sphericalEquivalent(power.value));
  if (!power || equivalent === null) return null;
  return known(equivalent, together(power.inputs, { 'spherical equivalent': worked(dioptres(equivalent)) }));
});

/** The lens in its frame with its centre thickness; nothing where the body of the lens is not known. */
const cutAndCentre = once((one): Known<{ readonly cut: Cut; readonly centre: number }> | null => {
  const [cut, body] = [isMade(one.lens) ? cutOf(one) : null, bodyOf(one)];
  if (!cut || !body) return null;
  const taken = [...body.assumed, ...cut.assumed, ...(isSegmented(one.lens) ? [ASSUMED.withoutSegment] : [])];
  return known(
    { cut: cut.value, centre: body.value.centre },
    together(cut.inputs, body.value.elsewhere, body.inputs),
    taken,
  );
});
