/**
 * What a check has something to look at in. Most orders have no slab, no tint and nothing outside, and a year of work
 * has a hundred thousand of them: a check that says what it needs is not run where nothing of it is there.
 */
import { type Block, type Line, type LineNode, sectionsOf } from '../../grammar';
import type { Context } from '../context';
import type { Evaluation } from '../evaluate';
import { isProgressive, isSegmented } from '../lens-kinds';
import type { Outcome } from '../measures/measure';
import type { Order, OrderedLens } from '../model';
import type { Subject } from './subject';

/** A part of an order, of its readings or of its evaluation that an order may have or not; a bit each. */
const BITS = {
  blank: 1 << 0,
  slab: 1 << 1,
  prism: 1 << 2,
  /** A power beside the ordered one: as prescribed, or of a lens that is not made to a power. */
  'other-power': 1 << 3,
  vertex: 1 << 4,
  tilt: 1 << 5,
  /** A PD of one eye. */
  monocular: 1 << 6,
  'prism-line': 1 << 7,
  'decentre-line': 1 << 8,
  'tint-line': 1 << 9,
  /** A declared instrument, and a reading. */
  instrument: 1 << 10,
  decision: 1 << 11,
  house: 1 << 12,
  /** A measure that fails, or failed in an earlier reading. */
  outside: 1 << 13,
  'not-read': 1 << 14,
  'not-judged': 1 << 15,
  repeats: 1 << 16,
  coarse: 1 << 17,
  uncertainty: 1 << 18,
  /** An add read as a difference of two positions. */
  difference: 1 << 19,
  'single-vision': 1 << 20,
  /** A design with a segment. */
  segment: 1 << 21,
  /** A design whose power changes along a corridor. */
  progressive: 1 << 22,
  degression: 1 << 23,
  /** An addition between those for far and near. */
  intermediate: 1 << 24,
  /** A power without a cylinder. */
  sphere: 1 << 25,
  /** An instrument with readings of test lenses. */
  'test-lens': 1 << 26,
  /** What a focimeter should read, stated by the maker. */
  verification: 1 << 27,
  balance: 1 << 28,
} as const;

export type Need = keyof typeof BITS;

export const bitOf = (need: Need): number => BITS[need];

/** What of it all a subject has. */
export const thereIn = ({ order, evaluation, context, block }: Subject): number =>
  inOrder(order) |
  inLens(order.lenses.R) |
  inLens(order.lenses.L) |
  inLines(block) |
  inEvaluation(evaluation) |
  (order.readings.length > 0 ? inInstruments(context) : 0);

function inInstruments({ instruments }: Context): number {
  let bits = instruments.size > 0 ? BITS.instrument : 0;
  for (const { testLenses } of instruments.values()) if (testLenses.length > 0) bits |= BITS['test-lens'];
  return bits;
}

function inOrder({ tested, asWorn, pd, nearPd, decided, readings }: Order): number {
  let bits = 0;
  if (tested || asWorn.vertex) bits |= BITS.vertex;
  if (asWorn.panto || asWorn.wrap) bits |= BITS.tilt;
  if (pd.R || pd.L || nearPd.R || nearPd.L) bits |= BITS.monocular;
  if (decided) bits |= BITS.decision;
  for (const { measurements } of readings)
    for (const one of measurements) if (one.quantity === 'add' && one.value.kind !== 'value') bits |= BITS.difference;
  return bits;
}

function inLens(lens: OrderedLens): number {
  const { blank, slab, prism, prismUnclear, rx, role, design, intermediate, written, verification } = lens;
  let bits = 0;
  if (verification) bits |= BITS.verification;
  if (role === 'balance') bits |= BITS.balance;
  if (design?.value.type === 'single-vision') bits |= BITS['single-vision'];
  if (isSegmented(lens)) bits |= BITS.segment;
  if (isProgressive(lens)) bits |= BITS.progressive;
  if (design && design.value.degression !== null) bits |= BITS.degression;
  if (intermediate || (design && design.value.intermediate !== null)) bits |= BITS.intermediate;
  if (written?.form === 'sphere') bits |= BITS.sphere;
  if (blank) bits |= BITS.blank;
  if (slab) bits |= BITS.slab;
  if (prism || prismUnclear) bits |= BITS.prism;
  if (rx || role !== 'made') bits |= BITS['other-power'];
  return bits;
}

/** The lines of the order itself, and prisms of a reading that have more than one part. */
function inLines(block: Block): number {
  let bits = 0;
  const sections = sectionsOf(block);
  for (let at = 0; at < sections.length; at++) {
    const kind = sections[at]?.kind;
    if (kind !== 'body' && kind !== 'reading') continue;
    const { node } = (block.lines[at] as Line).parsed(block.kind);
    if (kind === 'reading') {
      if (hasPrismInParts(node)) bits |= BITS['prism-line'];
    } else if (node.kind === 'tint') bits |= BITS['tint-line'];
    else if (node.kind === 'decentre') bits |= BITS['decentre-line'];
    else if (node.kind === 'prism') bits |= BITS['prism-line'];
    else if (node.kind === 'power')
      for (const { prism } of node.entries) if (prism.length > 0) bits |= BITS['prism-line'];
  }
  return bits;
}

function hasPrismInParts(node: LineNode): boolean {
  if (node.kind === 'prism') return node.entries.some(({ value }) => value.length > 1);
  return node.kind === 'power' && node.entries.some(({ prism }) => prism.length > 1);
}

const OF_OUTCOME: Readonly<Record<Outcome, number>> = {
  pass: 0,
  fail: BITS.outside,
  'not-read': BITS['not-read'],
  'not-judged': BITS['not-judged'],
};

function inEvaluation({ house, measures, earlier }: Evaluation): number {
  let bits = house ? BITS.house : 0;
  for (const { outcome, repeats, tooCoarse, uncertainty } of measures) {
    bits |= OF_OUTCOME[outcome];
    if (repeats.length > 0) bits |= BITS.repeats;
    if (tooCoarse) bits |= BITS.coarse;
    if (uncertainty !== null) bits |= BITS.uncertainty;
  }
  for (const { outcome } of earlier) if (outcome === 'fail') bits |= BITS.outside;
  return bits;
}
