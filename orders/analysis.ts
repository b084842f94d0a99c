/**
 * A document with its meaning: every block resolved and evaluated once and kept. After an edit only blocks that the edit
 * made anew are worked out again, and those whose standard, defaults or instruments have changed.
 */
import { type Block, type LentilDocument, parseDocument } from '../grammar';
import { type Context, contextOf, standardOf } from './context';
import { type Evaluation, evaluate } from './evaluate';
import type { Finding, Place } from './finding';
import type { HouseSet } from './house';
import type { Instrument, Order, Reading } from './model';
import { resolveOrder } from './resolve';
import { checkOrder } from './rules/check-order';
import { fileFindings } from './rules/file-findings';
import { writingFindings } from './rules/writing-findings';
import type { GuardBand } from './uncertainty';

export interface BlockAnalysis {
  readonly block: Block;
  readonly order: Order | null;
  readonly evaluation: Evaluation | null;
  readonly findings: readonly Finding[];
}

export interface AnalysisOptions {
  /** Tolerance set for orders and files that name none. */
  readonly standard?: string | null;
  /** What to do with a reading that its instrument cannot tell from the limit. */
  readonly guard?: GuardBand;
  /** Documents whose instruments and tolerances this one may name, nearest first. */
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
  readonly house: HouseSet | null;
  readonly guard: GuardBand;
  /** Where the `standard` line of the file stands: a wrong name is told there, and only once. */
  readonly standardLine: 'here' | 'elsewhere' | 'nowhere';
  readonly defaults: Block | null;
  readonly instruments: readonly (readonly [name: string, declared: Instrument | undefined])[];
  /** All declared instruments, where a reading names one that is not among them and the nearest is offered. */
  readonly declared: string | null;
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
  { standard = null, shared = [], guard = 'simple' }: AnalysisOptions = {},
): Analysis {
  const context = contextOf(document, standard, shared, guard);
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
    ...fileFindings(block, context),
    ...checkOrder({ order, evaluation, context, block }),
  ];
  return { result: { block, order, evaluation, findings }, on: dependenciesOf(order, block, context) };
}

function analyseOther(block: Block, context: Context): Kept {
  const findings = [...writingFindings(block, null), ...fileFindings(block, context)];
  return { result: { block, order: null, evaluation: null, findings }, on: dependenciesOf(null, block, context) };
}

const namesOf = (readings: readonly Reading[]): string[] => [
  ...new Set(
    readings
      .flatMap((reading) => [reading.with, ...reading.measurements.map((one) => one.with)])
      .filter((name) => name !== null),
  ),
];

function dependenciesOf(order: Order | null, block: Block, context: Context): Dependencies {
  const instruments = namesOf(order?.readings ?? []).map((name) => [name, context.instruments.get(name)] as const);
  return {
    standard: standardFor(order, context),
    house: houseFor(order, context),
    guard: context.guard,
    standardLine: standardLineOf(block, context),
    defaults: order && context.defaults,
    instruments,
    declared: instruments.some(([, declared]) => !declared) ? declaredIn(context) : null,
  };
}

const standardFor = (order: Order | null, context: Context): string | null =>
  order ? standardOf(order, context).name : (context.standard?.name ?? context.fallbackStandard);

const houseFor = (order: Order | null, context: Context): HouseSet | null =>
  order ? standardOf(order, context).house : null;

const standardLineOf = (block: Block, { standard }: Context): Dependencies['standardLine'] =>
  standard === null ? 'nowhere' : standard.block === block ? 'here' : 'elsewhere';

const declaredIn = ({ instruments }: Context): string => [...instruments.keys()].join('\n');

function holds({ result: { order, block }, on }: Kept, context: Context): boolean {
  return (
    on.standard === standardFor(order, context) &&
    on.house === houseFor(order, context) &&
    on.guard === context.guard &&
    on.standardLine === standardLineOf(block, context) &&
    on.defaults === (order && context.defaults) &&
    on.instruments.every(([name, declared]) => context.instruments.get(name) === declared) &&
    (on.declared === null || on.declared === declaredIn(context))
  );
}

/** A place of a block as a range of the document. */
export const rangeIn = (document: LentilDocument, blockIndex: number, { line, start, end }: Place) => {
  const number = (document.starts[blockIndex] as number) + line;
  return { start: { line: number, character: start }, end: { line: number, character: end } };
};
