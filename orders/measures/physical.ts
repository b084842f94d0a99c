/** Base curve, thickness, warp, and the facts a person records. */
import type { Eye } from '../../grammar';
import { type Limit, plainLimit } from '../limits';
import { otherEye, type Placed } from '../model';
import type { FigureQuantity } from '../reduce';
import { atLeast, type Case, figureAgainst, judge, type Measure, notRead, recorded, type Subject } from './measure';

export function physicalMeasures(one: Case): Measure[] {
  return [...lensMeasures(one, 'R'), ...lensMeasures(one, 'L'), ...facts(one)];
}

function lensMeasures(one: Case, eye: Eye): Measure[] {
  const { order, values, set, guard } = one;
  const lens = order.lenses[eye];
  if (lens.role !== 'made' && lens.role !== 'balance') return [];
  const measures: Measure[] = [];
  const figure = (
    quantity: FigureQuantity & Subject['quantity'],
    unit: Subject['unit'],
    ordered: Placed<number> | null,
    limit: Limit | null,
  ): void => {
    if (!ordered) return;
    const read = values.figures[quantity]?.[eye];
    const subject = { quantity, eye, unit };
    if (!read) measures.push(notRead(subject, ordered.value));
    else measures.push(judge(subject, figureAgainst(ordered.value, read, limit), guard));
  };
  /** An ordered edge or least thickness is a lower bound: thicker is never a fault. */
  const oneSided = (quantity: 'edge-thickness' | 'min-thickness', ordered: Placed<number> | null): void => {
    if (!ordered) return;
    const read = values.figures[quantity]?.[eye];
    const subject = { quantity, eye, unit: 'mm' } as const;
    measures.push(read ? atLeast(subject, read, ordered.value) : notRead(subject, ordered.value));
  };
  figure('base-curve', 'D', lens.baseCurve, plainLimit(set, 'baseCurve'));
  if (!lens.baseCurve) measures.push(...curveOfPartner(one, eye));
  figure('centre-thickness', 'mm', lens.thickness.centre, plainLimit(set, 'centreThickness'));
  const warp = values.figures.warp?.[eye];
  if (warp)
    measures.push(judge({ quantity: 'warp', eye, unit: 'D' }, figureAgainst(0, warp, plainLimit(set, 'warp')), guard));
  oneSided('edge-thickness', lens.thickness.edge);
  oneSided('min-thickness', lens.thickness.min);
  return measures;
}

/** A balance lens has to look like the other one, so its curve is held against what the other was read to have. */
function curveOfPartner({ order, values, set, guard }: Case, eye: Eye): Measure[] {
  const [own, other] = [values.figures['base-curve']?.[eye], values.figures['base-curve']?.[otherEye(eye)]];
  const limit = plainLimit(set, 'baseCurve');
  if (order.lenses[eye].role !== 'balance' || !own || !other || !limit) return [];
  const figure = figureAgainst(other.value, own, limit);
  figure.assumed = 'fits-partner';
  return [judge({ quantity: 'base-curve', eye, unit: 'D' }, figure, guard)];
}

/** A failed test fails the pair whatever the figures say. */
function facts({ values }: Case): Measure[] {
  const measures: Measure[] = [];
  for (const quantity of FACTS) {
    const read = values.facts[quantity];
    if (read)
      measures.push(recorded({ quantity, eye: null, unit: null }, read, read.value === 'failed' ? 'fail' : 'pass'));
  }
  return measures;
}

const FACTS = ['impact', 'cosmetic', 'marking'] as const;
