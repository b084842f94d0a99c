/** Figures of the lens as it sits before the eye: what tilt and wrap make of it, and what they call for. */

import { opticalCentreHeightForTilt, powerForWear, prismFromWrap, wornPower } from '../../optics';
import { isMade, isSingleVision } from '../lens-kinds';
import { carriedToWear, usePower } from '../power-to-make';
import { ASSUMED } from './assumptions';
import { bodyOf } from './body';
import { type Case, indexOf, known, once, powerOf } from './case';
import {
  degrees,
  dioptres,
  type Input,
  type Known,
  length,
  mm,
  ordered,
  prism,
  together,
  type Worked,
  work,
  worked,
} from './figure';
import { SOURCES } from './sources';
import { vertexWay } from './vertex-way';

interface Position {
  readonly pantoscopic: number;
  readonly wrap: number;
}

/** What the lens acts as when it is worn as it will be read on the focimeter. */
export function worn(one: Case): Worked | null {
  const [power, index, position] = [powerOf(one), indexOf(one), positionOf(one)];
  if (!power || !index || !position) return null;
  const basis = {
    formula:
      'power matrix × tilt factor; along the tilt axis k, across it k / cos² tilt, k = (√(index² − sin² tilt) − cos tilt) / (index − 1)',
    inputs: together(power.inputs, index.inputs, position.inputs),
    source: SOURCES.tilt,
    assumed: position.assumed,
  };
  return work('worn-power', one.eye, basis, () => ({
    power: dioptres(wornPower(power.value, { eye: one.eye, ...position.value }, index.value)),
  }));
}

/** The power to order, so that the prescription is worn. Not where the written power is that already. */
export function forWear(one: Case): Worked | null {
  const { order, lens, eye } = one;
  const byUse = usePower(lens);
  const [index, position] = [indexOf(one), positionOf(one)];
  if (!isMade(lens) || !byUse || !index || !position || order.compensation?.value === 'done') return null;
  const { tested, asWorn } = order;
  const worn = asWorn.vertex;
  const way = tested && worn ? vertexWay(lens, byUse) : null;
  const carried = tested && worn ? carriedToWear(order, lens, byUse) : byUse.power;
  if (!carried) return null;
  const inputs = together(
    { power: byUse.from === 'written' ? ordered(dioptres(byUse.power)) : worked(dioptres(byUse.power)) },
    index.inputs,
    position.inputs,
    tested && worn && { tested: length(tested), worn: length(worn) },
    way?.inputs,
  );
  const basis = {
    formula: `${way ? `first the vertex distance: ${way.formula}; then ` : ''}the tilt factors taken out of the power matrix`,
    inputs,
    source: way ? `${way.source} ${SOURCES.tilt}` : SOURCES.tilt,
    assumed: [...(way?.assumed ?? []), ...position.assumed],
  };
  return work('power-for-wear', eye, basis, () => ({
    power: dioptres(powerForWear(carried, { eye, ...position.value }, index.value)),
  }));
}

/** Prism that wrap alone brings, whatever the power. */
export function wrapPrism(one: Case): Worked | null {
  const { wrap } = one.order.asWorn;
  const body = bodyOf(one);
  if (!isMade(one.lens) || !wrap || wrap.value === 0 || !body) return null;
  const { front, centre, index } = body.value;
  const basis = {
    formula: '100 × thickness / index × front surface × sin wrap, base out',
    inputs: together(body.inputs, { wrap: angle(wrap) }),
    source: SOURCES.wrapPrism,
    assumed: body.assumed,
  };
  return work('wrap-prism', one.eye, basis, () => ({
    prism: prism({ in: -prismFromWrap(front, centre, index, wrap.value), up: 0 }),
  }));
}

/** Where the optical centre of a single-vision lens belongs for its axis to pass the eye’s centre of rotation. */
export function centreHeight({ order, lens, eye }: Case): Worked | null {
  const { panto } = order.asWorn;
  const { height } = lens;
  if (!isMade(lens) || !isSingleVision(lens) || !panto || !height) return null;
  const basis = {
    formula: 'height − tilt / 2',
    inputs: { height: length(height), tilt: angle(panto) },
    source: SOURCES.centreForTilt,
    assumed: [ASSUMED.pupilHeight],
  };
  return work('optical-centre-height', eye, basis, () => ({
    height: mm(opticalCentreHeightForTilt(height.value, panto.value)),
  }));
}

/** Tilt and wrap; where only one is given the other is taken as none. */
const positionOf = once(({ order, lens }): Known<Position> | null => {
  const { panto, wrap } = order.asWorn;
  if ((!panto && !wrap) || lens.role === 'absent') return null;
  const inputs = together(panto && { tilt: angle(panto) }, wrap && { wrap: angle(wrap) });
  const taken = [...(panto ? [] : [ASSUMED.noTilt]), ...(wrap ? [] : [ASSUMED.noWrap])];
  return known({ pantoscopic: panto?.value ?? 0, wrap: wrap?.value ?? 0 }, inputs, taken);
});

const angle = ({ value }: { readonly value: number }): Input => ordered(degrees(value));
