/** What a pair for protection, or for a child, has to have recorded beyond its powers: tests, marks, thickness. */
import type { Eye } from '../../grammar';
import { safetyThicknesses, type ToleranceSet } from '../../tables';
import { isLess, tidy } from '../exact';
import type { Order } from '../model';
import type { Read } from '../reduce';
import { atLeast } from './judge';
import { blank, type Case, type Measure, notRead, type Subject } from './measure';

/** What a person records as passed or failed and the order may call for. */
export type CalledFact = 'impact' | 'marking';

/** The regulation on impact and the least thickness of protective lenses are those of the United States. */
const isAmerican = ({ jurisdiction }: ToleranceSet): boolean => jurisdiction.includes('United States');

const NOTHING: readonly CalledFact[] = [];

/**
 * Returns the recorded facts that an order calls for. Protection calls for the impact test, and for the marks once the
 * lens is edged, whatever the set: common practice, no source. A child’s pair calls for the impact test where 21 CFR 801.410
 * holds, which asks it of every dress lens (FDA guidance of 2010); elsewhere no source asks more of a child’s pair than of
 * any other.
 */
export function factsCalledFor({ purpose, supply }: Order, set: ToleranceSet): readonly CalledFact[] {
  if (purpose?.value === 'safety') return supply === 'uncut' ? ['impact'] : ['impact', 'marking'];
  return purpose?.value === 'child' && isAmerican(set) ? ['impact'] : NOTHING;
}

/**
 * Returns the least thickness that any rating of a protective prescription lens allows, millimetres; null for another
 * purpose, and for sets of other countries, for which no figure is at hand. Source: ANSI Z87.1, as retold in the table.
 */
export function leastForSafety({ purpose }: Order, set: ToleranceSet): number | null {
  if (purpose?.value !== 'safety' || !isAmerican(set)) return null;
  return Math.min(...safetyThicknesses.map(({ atLeast: bound }) => bound));
}

const WHERE = ['min-thickness', 'centre-thickness', 'edge-thickness'] as const;

/**
 * Holds the thinnest figure read against the least thickness ordered, or the least for protection where that is more. A
 * figure read as the least speaks for the whole lens, and so does the thinner of centre and edge. One of the two alone
 * can only refuse: the lens may be thinner where nobody measured. Null where nothing is asked.
 */
export function leastThickness(one: Case, eye: Eye): Measure | null {
  const { order, values, set } = one;
  const ordered = order.lenses[eye].thickness.min?.value ?? null;
  if (ordered === null && order.purpose?.value !== 'safety') return null;
  const lawful = leastForSafety(order, set);
  const bound = ordered !== null && (lawful === null || isLess(lawful, ordered)) ? ordered : lawful;
  const read = WHERE.flatMap((where) => values.figures[where]?.[eye] ?? []);
  const thinnest = read.toSorted((a, b) => a.value - b.value)[0];
  const subject: Subject = { quantity: 'min-thickness', eye, unit: 'mm' };
  const isWhole = values.figures['min-thickness']?.[eye] !== undefined || read.length === 2;
  const isThin = thinnest !== undefined && bound !== null && isLess(thinnest.value, bound);
  if (!thinnest || (!isWhole && !isThin)) return notRead(subject, bound, thinnest ? 'one-place' : null);
  if (bound === null) return recordedThickness(subject, thinnest);
  const measure = atLeast(subject, thinnest, bound);
  return bound === ordered ? measure : { ...measure, because: 'least-for-safety' };
}

/** It was measured, and nothing says how thick it has to be. */
function recordedThickness(subject: Subject, { value, reading, place, steps }: Read<number>): Measure {
  const measure = blank(subject, 'pass', null);
  measure.read = tidy(value);
  measure.reading = reading;
  measure.place = place;
  measure.steps = steps;
  return measure;
}
