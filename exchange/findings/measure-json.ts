import { type Measure, tidy } from '../../orders';
import { plain, plainStep, rangeOf } from './plain';
import type { MeasureJson } from './shape';

/** A measure for JSON. What the library does not know stays null. */
export function measureInJson(measure: Measure, firstLine: number): MeasureJson {
  const { quantity, meridian, eye, limit, outcome, reading, place } = measure;
  const { tooCoarse, because, spread, uncertainty, house, beside } = measure;
  return {
    quantity,
    ...(meridian ? { meridian } : {}),
    eye,
    ordered: plain(measure.ordered),
    read: plain(measure.read),
    deviation: plain(measure.deviation),
    reading,
    limit: plain(limit?.amount ?? null),
    ...(AT_LEAST.has(quantity) && measure.ordered !== null ? { low: tidy(measure.ordered) } : {}),
    unit: measure.unit,
    outcome,
    standard: limit?.set ?? null,
    evidence: limit?.evidence ?? null,
    source: limit?.source ?? null,
    row: limit?.row ?? null,
    range: place && rangeOf(place, firstLine),
    steps: measure.steps.map(plainStep),
    ...(tooCoarse ? { tooCoarse } : {}),
    ...(because ? { because } : {}),
    ...(spread === null ? {} : { spread: tidy(spread), repeats: measure.repeats.map(({ read }) => tidy(read)) }),
    ...(uncertainty === null ? {} : { uncertainty: tidy(uncertainty) }),
    ...(house ? { house: { set: house.set, limit: tidy(house.amount), breached: house.breached } } : {}),
    ...(beside ? { beside: { amount: tidy(beside.amount), unit: beside.unit } } : {}),
  };
}

/** What was ordered is the least that will do. */
const AT_LEAST: ReadonlySet<Measure['quantity']> = new Set(['edge-thickness', 'min-thickness']);
