/** How an order came to the bench: what its first reading said by itself, before anything was read anew or replaced. */
import type { BlockAnalysis } from './analysis';
import type { Context } from './context';
import { counts, type Evaluation, evaluate, isLater } from './evaluate';
import type { Finding } from './finding';
import type { Order, Reading } from './model';
import { ruleOf } from './rules/catalogue';
import { causeFindings } from './rules/cause/check-causes';
import { barsAcceptance, withFindings } from './rules/standing';

/** How an order came out when it was first read as a finished pair. */
export interface FirstPass {
  /** Index of the reading in the order. */
  readonly reading: number;
  /** As if that reading were the only one; places and indexes are those of the order. */
  readonly evaluation: Evaluation;
  /** What probably happened, where that reading fails. */
  readonly causes: readonly Finding[];
}

/**
 * The earliest reading that could accept the order, judged by itself: a final one, or one of any stage where the lenses
 * are not glazed. Lines below a `replaced` of that reading belong to another lens and are left out, unless nothing was
 * read above it. Null for an order that has no such reading.
 */
export function firstPassOf({ block, order, evaluation, findings }: BlockAnalysis, context: Context): FirstPass | null {
  if (!order || !evaluation) return null;
  const reading = earliest(order);
  if (reading === null) return null;
  const first = asReadFirst(order.readings[reading] as Reading);
  if (order.readings.length === 1 && first === order.readings[reading])
    return { reading, evaluation, causes: findings.filter(({ code }) => ruleOf(code)?.family === 'cause') };
  const alone = {
    ...order,
    readings: order.readings.map((one, at) => (at === reading ? first : { ...one, measurements: [], replaced: [] })),
  };
  const judged = withFindings(
    evaluate(alone, context),
    findings.filter((finding) => bears(finding, order.readings, reading)),
  );
  return { reading, evaluation: judged, causes: causeFindings({ order: alone, evaluation: judged, context, block }) };
}

/** What was found in the order itself, and in the lines of that reading; the warnings of the bench speak of all readings. */
function bears(finding: Finding, readings: readonly Reading[], own: number): boolean {
  const at = readings.findLastIndex(({ place }) => place.line <= finding.line);
  return (at === -1 || at === own) && barsAcceptance(finding);
}

function earliest(order: Order): number | null {
  let found: number | null = null;
  for (const [at, reading] of order.readings.entries()) {
    if (!counts(order, reading)) continue;
    if (found === null || isLater(order.readings[found] as Reading, reading)) found = at;
  }
  return found;
}

function asReadFirst(reading: Reading): Reading {
  if (reading.replaced.length === 0) return reading;
  const line = Math.min(...reading.replaced.map(({ place }) => place.line));
  const measurements = reading.measurements.filter(({ place }) => place.line < line);
  return measurements.length > 0 ? { ...reading, measurements, replaced: [] } : reading;
}
