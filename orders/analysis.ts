/**
 * A document with its meaning: every block resolved and evaluated once and kept. After an edit only blocks that the edit
 * made anew are worked out again, and those whose standard, defaults or instruments have changed.
 */
import { type Block, type LentilDocument, parseDocument } from '../grammar';
import { type Context, contextOf, standardOf } from './context';
import { type Evaluation, evaluate } from './evaluate';
import type { Finding, Place } from './finding';
import type { Instrument, Order, Reading } from './model';
import { resolveOrder } from './resolve';
import { checkOrder } from './rules/check-order';
import { writingFindings } from './rules/writing-findings';

export interface BlockAnalysis {
  readonly block: Block;
  readonly order: Order | null;
  readonly evaluation: Evaluation | null;
  readonly findings: readonly Finding[];
}

export interface AnalysisOptions {
  /** Tolerance set for orders and files that name none. */
  readonly standard?: string | null;
  /** Documents whose instruments this one may name, nearest first. */
  readonly shared?: readonly LentilDocument[];
}

export interface Analysis {
  readonly document: LentilDocument;
  readonly context: Context;
  /** One for each block of the document, in its order. */
  readonly blocks: readonly BlockAnalysis[];
}

/** What the result of an order rests on besides its own text. */
interface Dependencies {
  readonly standard: string | null;
  readonly defaults: Block | null;
  readonly instruments: readonly (Instrument | undefined)[];
}

interface Kept {
  readonly result: BlockAnalysis;
  readonly on: Dependencies;
}

const KEPT = Symbol('analysis');

/** Analyses a text; see `analyseDocument`. */
export const analyse = (text: string, options: AnalysisOptions = {}): Analysis =>
  analyseDocument(parseDocument(text), options);

/** Analyses a document, reusing whatever an earlier analysis of the same blocks worked out. */
export function analyseDocument(
  document: LentilDocument,
  { standard = null, shared = [] }: AnalysisOptions = {},
): Analysis {
  const context = contextOf(document, standard, shared);
  return { document, context, blocks: document.blocks.map((block) => analyseBlock(block, context)) };
}

/** Analyses one block on its own. */
export function analyseBlock(block: Block, context: Context): BlockAnalysis {
  const known = block.memo.get(KEPT) as Kept | undefined;
  if (known && holds(known, context)) return known.result;
  const { result, on } = block.kind === 'order' ? analyseOrder(block, context) : analyseOther(block, context);
  block.memo.set(KEPT, { result, on } satisfies Kept);
  return result;
}

function analyseOrder(block: Block, context: Context): Kept {
  const resolved = resolveOrder(block, context.defaults);
  const { order } = resolved;
  const evaluation = evaluate(order, context);
  const findings = [
    ...writingFindings(block, resolved.inReading),
    ...resolved.findings,
    ...checkOrder({ order, evaluation, context }, block),
  ];
  return { result: { block, order, evaluation, findings }, on: dependenciesOf(order, context) };
}

function analyseOther(block: Block, context: Context): Kept {
  const findings = writingFindings(block, null);
  return {
    result: { block, order: null, evaluation: null, findings },
    on: { standard: context.standard?.name ?? context.fallbackStandard, defaults: null, instruments: [] },
  };
}

const namesOf = (readings: readonly Reading[]): string[] => [
  ...new Set(
    readings
      .flatMap((reading) => [reading.with, ...reading.measurements.map((one) => one.with)])
      .filter((name) => name !== null),
  ),
];

function dependenciesOf(order: Order, context: Context): Dependencies {
  return {
    standard: standardOf(order, context).name,
    defaults: context.defaults,
    instruments: namesOf(order.readings).map((name) => context.instruments.get(name)),
  };
}

function holds({ result, on }: Kept, context: Context): boolean {
  if (!result.order) return on.standard === (context.standard?.name ?? context.fallbackStandard);
  if (on.defaults !== context.defaults || on.standard !== standardOf(result.order, context).name) return false;
  const names = on.instruments.length === 0 ? [] : namesOf(result.order.readings);
  return names.every((name, at) => on.instruments[at] === context.instruments.get(name));
}

/** A place of a block as a range of the document. */
export const rangeIn = (document: LentilDocument, blockIndex: number, { line, start, end }: Place) => {
  const number = (document.starts[blockIndex] as number) + line;
  return { start: { line: number, character: start }, end: { line: number, character: end } };
};
