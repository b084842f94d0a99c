import type { Measure } from '../../orders';
import { plain, plainStep, rangeOf } from './plain';
import type { MeasureJson } from './shape';

/** A measure for JSON. What the library does not know stays null. */
export function measureInJson(measure: Measure, firstLine: number): MeasureJson {
  const { quantity, meridian, eye, limit, outcome, reading, place, tooCoarse, because, beside } = measure;
  return {
    quantity,
    ...(meridian ? { meridian } : {}),
    eye,
    ordered: plain(measure.ordered),
    read: plain(measure.read),
    deviation: plain(measure.deviation),
    reading,
    limit: plain(limit?.amount ?? null),
    unit: isFact(measure) ? null : measure.unit,
    outcome,
    standard: limit?.set ?? null,
    evidence: limit?.evidence ?? null,
    source: limit?.source ?? null,
    row: limit?.row ?? null,
    range: place && rangeOf(place, firstLine),
    steps: measure.steps.map(plainStep),
    ...(tooCoarse ? { tooCoarse } : {}),
    ...(because ? { because } : {}),
    ...(beside ? { beside: { amount: plain(beside.amount) ?? 0, unit: beside.unit } } : {}),
  };
}

/** A passed or failed test is no figure and has no unit. */
const isFact = ({ quantity }: Measure): boolean => quantity === 'impact' || quantity === 'cosmetic';
