/**
 * What a check has something to look at in. Most orders have no slab, no tint and nothing outside, and a year of work
 * has a hundred thousand of them: a check that says what it needs is not run where nothing of it is there.
 */
import type { LineNode } from '../../grammar';
import type { Measure } from '../measures/measure';
import { EYES, type OrderedLens } from '../model';
import type { Subject } from './rule';

/** A part of an order, of its readings or of its evaluation that an order may have or not. */
export type Need = keyof typeof IS_THERE;

const inLens =
  (has: (lens: OrderedLens) => unknown) =>
  ({ order: { lenses } }: Subject): boolean =>
    EYES.some((eye) => has(lenses[eye]));

const inMeasure =
  (is: (measure: Measure) => boolean) =>
  ({ evaluation: { measures } }: Subject): boolean =>
    measures.some(is);

const inLine =
  (is: (node: LineNode) => boolean) =>
  ({ block }: Subject): boolean =>
    block.lines.some((line) => is(line.parsed(block.kind).node));

const IS_THERE = {
  blank: inLens(({ blank }) => blank),
  slab: inLens(({ slab }) => slab),
  prism: inLens(({ prism, prismUnclear }) => prism ?? prismUnclear),
  /** A power beside the ordered one: as prescribed, or of a lens that is not made to a power. */
  'other-power': inLens(({ rx, role }) => rx !== null || role !== 'made'),
  vertex: ({ order: { tested, asWorn } }: Subject) => tested !== null || asWorn.vertex !== null,
  tilt: ({ order: { asWorn } }: Subject) => asWorn.panto !== null || asWorn.wrap !== null,
  monocular: ({ order: { pd, nearPd } }: Subject) => (pd.R ?? pd.L ?? nearPd.R ?? nearPd.L) !== null,
  'prism-line': inLine((node) => node.kind === 'prism' || (node.kind === 'power' && node.entries.some(hasPrism))),
  'decentre-line': inLine(({ kind }) => kind === 'decentre'),
  'tint-line': inLine(({ kind }) => kind === 'tint'),
  instrument: ({ order, context }: Subject) => context.instruments.size > 0 && order.readings.length > 0,
  decision: ({ order }: Subject) => order.decided !== null,
  house: ({ evaluation }: Subject) => evaluation.house !== null,
  outside: ({ evaluation: { measures, earlier } }: Subject) => measures.some(isOutside) || earlier.some(isOutside),
  'not-read': inMeasure(({ outcome }) => outcome === 'not-read'),
  'not-judged': inMeasure(({ outcome }) => outcome === 'not-judged'),
  repeats: inMeasure(({ repeats }) => repeats.length > 0),
  coarse: inMeasure(({ tooCoarse }) => tooCoarse),
  uncertainty: inMeasure(({ uncertainty }) => uncertainty !== null),
  /** An add as a difference of two positions. */
  difference: ({ order: { readings } }: Subject) =>
    readings.some(({ measurements }) =>
      measurements.some((one) => one.quantity === 'add' && one.value.kind !== 'value'),
    ),
} satisfies Readonly<Record<string, (subject: Subject) => boolean>>;

function hasPrism({ prism }: { readonly prism: readonly unknown[] }): boolean {
  return prism.length > 0;
}

function isOutside({ outcome }: Measure): boolean {
  return outcome === 'fail';
}

const NEEDS = Object.keys(IS_THERE) as readonly Need[];
const LOOKS = Object.values(IS_THERE) as readonly ((subject: Subject) => boolean)[];

/** What of it all a subject has, a bit for each. */
export function thereIn(subject: Subject): number {
  let bits = 0;
  for (let at = 0; at < LOOKS.length; at++) if (LOOKS[at]?.(subject)) bits |= 1 << at;
  return bits;
}

export const isThere = (bits: number, need: Need): boolean => (bits & (1 << NEEDS.indexOf(need))) !== 0;
