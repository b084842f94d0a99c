/** Front surface, thickness and index of a lens of which the order does not say them all: the rest as it usually is. */
import { approximateSag, baseCurveByVogel, sphericalEquivalent, surfacePower } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import { ASSUMED, USUAL_CENTRE, USUAL_EDGE, USUAL_INDEX, USUAL_RADIUS } from './assumptions';
import type { Body } from './body';
import { type Case, indexOf, known, powerOf } from './case';
import { amount, assumed, dioptres, type Known, length, mm, ordered, together, worked } from './figure';

/** As the order says it, else by Vogel’s rule, the usual thickness and the common resin; null without a power. */
export function usualBodyOf(one: Case): Known<Pick<Body, 'front' | 'index' | 'centre'>> | null {
  const power = powerOf(one);
  const mean = power && attempt(() => sphericalEquivalent(power.value));
  if (!power || mean === null) return null;
  const index = indexOf(one) ?? known(USUAL_INDEX, { index: assumed(amount(USUAL_INDEX, null)) }, [ASSUMED.index]);
  const curve = curveOf(one, mean);
  const centre = centreOf(one, mean, index.value);
  const front = curve && attempt(() => surfacePower(curve.value, index.value));
  if (!curve || !centre || front === null) return null;
  const surface = { 'front surface': worked(dioptres(front)) };
  const inputs = together(curve.inputs, index.inputs, surface, centre.inputs);
  const taken = [...power.assumed, ...curve.assumed, ...index.assumed, ...centre.assumed];
  return known({ front, index: index.value, centre: centre.value }, inputs, taken);
}

function curveOf({ lens }: Case, mean: number): Known<number> | null {
  const { baseCurve } = lens;
  if (baseCurve)
    return known(baseCurve.value, { 'base curve': ordered(dioptres(baseCurve.value)) }, [ASSUMED.baseCurveIndex]);
  const curve = attempt(() => baseCurveByVogel(mean));
  return curve === null
    ? null
    : known(curve, { 'base curve': assumed(dioptres(curve)) }, [ASSUMED.baseCurve, ASSUMED.baseCurveIndex]);
}

function centreOf({ lens }: Case, mean: number, index: number): Known<number> | null {
  const { centre } = lens.thickness;
  if (centre) return known(centre.value, { 'centre thickness': length(centre) });
  if (mean <= 0) return known(USUAL_CENTRE, { 'centre thickness': assumed(mm(USUAL_CENTRE)) }, [ASSUMED.usualCentre]);
  const sag = attempt(() => approximateSag(mean, index, USUAL_RADIUS));
  if (sag === null) return null;
  const thick = tidy(USUAL_EDGE + sag);
  return known(thick, { 'centre thickness': assumed(mm(thick)) }, [ASSUMED.usualEdge, ASSUMED.usualDiameter]);
}
