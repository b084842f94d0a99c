/** Base curve, thickness, warp, and the facts a person records. */
import type { Eye } from '../../grammar';
import { isMade } from '../lens-kinds';
import { type PlainTable, plainLimit, slabLimit } from '../limits';
import { EYES, type OrderedLens, otherEye, type Placed } from '../model';
import type { Read } from '../reduce';
import { TESTS, type TestQuantity, type TestResult } from '../test-results';
import { atLeast, figureAgainst, judge } from './judge';
import { type Case, classOfLens, type Measure, notRead, recorded, type Subject } from './measure';
import { factsCalledFor, leastThickness } from './safety';

export function physicalMeasures(one: Case): Measure[] {
  return [...lensMeasures(one, 'R'), ...lensMeasures(one, 'L'), ...facts(one)];
}

function lensMeasures(one: Case, eye: Eye): readonly Measure[] {
  const lens = one.order.lenses[eye];
  if (!isMade(lens)) return NONE;
  const { baseCurve, thickness } = lens;
  const measures: Measure[] = [];
  if (baseCurve) measures.push(figure(one, eye, 'base-curve', 'D', baseCurve, 'baseCurve'));
  else measures.push(...curveOfPartner(one, eye));
  if (thickness.centre) measures.push(figure(one, eye, 'centre-thickness', 'mm', thickness.centre, 'centreThickness'));
  const warp = one.values.figures.warp?.[eye];
  if (warp) {
    const held = figureAgainst(0, warp, plainLimit(one.set, 'warp'));
    measures.push(judge({ quantity: 'warp', eye, unit: 'D' }, held, one.guard));
  }
  measures.push(...slabMeasure(one, lens));
  if (thickness.edge) measures.push(edgeThickness(one, eye, thickness.edge));
  const least = leastThickness(one, eye);
  if (least) measures.push(least);
  return measures;
}

/** What is ground into one lens is called for there, and has no place in a lens that was ordered without it. */
function slabMeasure({ values, set, guard, order }: Case, lens: OrderedLens): readonly Measure[] {
  const { eye, slab } = lens;
  const read = values.figures.slab?.[eye];
  const amount = slab ? slab.value.amount : 0;
  if (amount === null || (!slab && !read)) return NONE;
  const ordered = slab?.value.reverse ? 0 - amount : amount;
  const subject: Subject = { quantity: 'slab', eye, unit: 'prism' };
  if (!read) return [notRead(subject, ordered)];
  return [judge(subject, figureAgainst(ordered, read, slabLimit(set, classOfLens(lens), order.supply)), guard)];
}

const NONE: readonly Measure[] = [];

function figure(
  { values, set, guard }: Case,
  eye: Eye,
  quantity: 'base-curve' | 'centre-thickness',
  unit: Subject['unit'],
  ordered: Placed<number>,
  table: PlainTable,
): Measure {
  const read = values.figures[quantity]?.[eye];
  const subject = { quantity, eye, unit };
  if (!read) return notRead(subject, ordered.value);
  return judge(subject, figureAgainst(ordered.value, read, plainLimit(set, table)), guard);
}

/** An ordered edge thickness is a lower bound: thicker is never a fault. */
function edgeThickness({ values }: Case, eye: Eye, ordered: Placed<number>): Measure {
  const read = values.figures['edge-thickness']?.[eye];
  const subject = { quantity: 'edge-thickness', eye, unit: 'mm' } as const;
  return read ? atLeast(subject, read, ordered.value) : notRead(subject, ordered.value);
}

/** A balance lens has to look like the other one, so its curve is held against what the other was read to have. */
function curveOfPartner({ order, values, set, guard }: Case, eye: Eye): readonly Measure[] {
  if (order.lenses[eye].role !== 'balance') return NONE;
  const [own, other] = [values.figures['base-curve']?.[eye], values.figures['base-curve']?.[otherEye(eye)]];
  const limit = plainLimit(set, 'baseCurve');
  if (!own || !other || !limit) return NONE;
  const figure = figureAgainst(other.value, own, limit);
  figure.assumed = 'fits-partner';
  return [judge({ quantity: 'base-curve', eye, unit: 'D' }, figure, guard)];
}

/**
 * A failed test fails the pair whatever the figures say; one that is called for and not recorded leaves it open. A test of
 * one lens says nothing of the other: where one is recorded, the other one made needs its own.
 */
function facts({ values, order, set }: Case): Measure[] {
  const measures: Measure[] = factsCalledFor(order, set)
    .filter((quantity) => !values.facts[quantity])
    .map((quantity) => notRead({ quantity, eye: null, unit: null }, null));
  for (const quantity of TESTS) {
    const read = values.facts[quantity];
    if (!read) continue;
    if (read.pair) measures.push(fact(quantity, null, read.pair));
    else
      for (const eye of EYES) {
        const own = read[eye];
        if (own) measures.push(fact(quantity, eye, own));
        else if (isMade(order.lenses[eye])) measures.push(notRead({ quantity, eye, unit: null }, null));
      }
  }
  return measures;
}

const fact = (quantity: TestQuantity, eye: Eye | null, read: Read<TestResult>): Measure =>
  recorded({ quantity, eye, unit: null }, read, read.value === 'failed' ? 'fail' : 'pass');
