/**
 * A document with its meaning: every block resolved and evaluated once and kept. After an edit only blocks that the edit
 * made anew are worked out again, and those whose standard, defaults or instruments have changed.
 */
import { type Block, type LentilDocument, parseDocument } from '../grammar';
import { type Choices, type Context, contextOf, standardOf } from './context';
import { type Evaluation, evaluate } from './evaluate';
import type { Finding, Place } from './finding';
import type { HouseSet } from './house';
import type { Instrument, Order, Reading } from './model';
import type { OrderElsewhere } from './order-elsewhere';
import { resolveOrder } from './resolve';
import { type Checked, checkOrders } from './rules/check-orders';
import { withoutConfirmed } from './rules/confirmed';
import { fileFindings } from './rules/file-findings';
import { groundFindings } from './rules/ground-findings';
import { withFindings } from './rules/standing';
import { writingFindings } from './rules/writing-findings';
import type { GuardBand } from './uncertainty';

/** A block with its meaning: the order and its evaluation where it is one, and what was found in it. */
export interface BlockAnalysis {
  readonly block: Block;
  readonly order: Order | null;
  readonly evaluation: Evaluation | null;
  readonly findings: readonly Finding[];
  /** Lines of the file’s `defaults` block of which something holds for the order, counted from its first line. */
  readonly inherited: readonly number[];
}

/** What the user decides, and the texts a document may refer to. */
export interface AnalysisOptions extends Choices {
  /** Documents whose instruments and tolerances this one may name, nearest first. */
  readonly shared?: readonly LentilDocument[];
}

/** A document with the meaning of all its blocks. */
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
  readonly nearPercent: number | null;
  readonly missing: Context['missing'];
  /** Orders of its name in other files. */
  readonly elsewhere: readonly OrderElsewhere[] | null;
  readonly today: string | null;
  readonly hasFileStandard: boolean;
  /** What is told of lines that hold for the whole file. */
  readonly file: readonly Finding[];
  readonly defaults: Block | null;
  readonly stray: string | null;
  /** How many orders share its name, where it is not the only one. */
  readonly sharing: number | null;
  readonly instruments: readonly (readonly [name: string, declared: Instrument | undefined])[];
  /** All declared names, where one is used that is not among them and the nearest is offered. */
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
export function analyseDocument(document: LentilDocument, { shared = [], ...choices }: AnalysisOptions = {}): Analysis {
  const context = contextOf(document, choices, shared);
  return { document, context, blocks: document.blocks.map((block) => analyseBlock(block, context)) };
}

/** Analyses one block on its own, and keeps the result for as long as what it rests on stays the same. */
export function analyseBlock(block: Block, context: Context): BlockAnalysis {
  const known = block.memo.get(KEPT) as Kept | undefined;
  if (known && holds(known, context)) return known.result;
  const [result] = analyseTogether([block], context) as [BlockAnalysis];
  const on = dependenciesOf(result.order, block, context);
  block.memo.set(KEPT, { result, on } satisfies Kept);
  return result;
}

/**
 * Analyses some blocks of one text, step by step for all of them and not block by block: an order passes through more
 * code than a processor keeps at hand, and takes a third longer where it comes alone. A dozen or two are enough; of many
 * more the results outlive the youngest objects and cost the garbage collector what was gained.
 */
export function analyseTogether(blocks: readonly Block[], context: Context): BlockAnalysis[] {
  const resolved = blocks.map((block) => (block.kind === 'order' ? resolveOrder(block, context.defaults) : null));
  const evaluated = resolved.map((one) => one && evaluate(one.order, context));
  const told = blocks.map(writingFindings);
  const orders: Checked[] = [];
  for (let at = 0; at < blocks.length; at++) {
    const [block, one, evaluation, findings] = [
      blocks[at] as Block,
      resolved[at],
      evaluated[at],
      told[at] as Finding[],
    ];
    if (one) for (const finding of one.findings) findings.push(finding);
    for (const finding of fileFindings(block, context)) findings.push(finding);
    if (one) for (const finding of groundFindings(one.order, context)) findings.push(finding);
    if (one && evaluation) orders.push({ subject: { order: one.order, evaluation, context, block }, findings });
  }
  checkOrders(orders);
  return blocks.map((block, at) => {
    const [one, evaluation, all] = [resolved[at], evaluated[at], told[at] as Finding[]];
    if (!one || !evaluation) return { block, order: null, evaluation: null, findings: all, inherited: [] };
    const findings = withoutConfirmed(all, one.order, block);
    const { order, inherited } = one;
    return { block, order, evaluation: withFindings(evaluation, findings), findings, inherited };
  });
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
  const standard = order ? standardOf(order, context) : null;
  const isOpen = instruments.some(([, declared]) => !declared) || standard?.set === null;
  return {
    standard: standard?.name ?? null,
    house: standard?.house ?? null,
    guard: context.guard,
    nearPercent: context.nearPercent,
    missing: context.missing,
    elsewhere: elsewhereOf(order, context),
    today: context.today,
    hasFileStandard: context.standard !== null,
    file: fileFindings(block, context),
    defaults: order && context.defaults,
    stray: order && context.stray,
    sharing: sharing(order, context),
    instruments,
    declared: isOpen ? declaredIn(context) : null,
  };
}

const declaredIn = ({ instruments, houses }: Context): string =>
  [...instruments.keys(), '', ...houses.keys()].join('\n');

const elsewhereOf = (order: Order | null, { elsewhere }: Context): readonly OrderElsewhere[] | null =>
  (order?.name == null || elsewhere.size === 0 ? undefined : elsewhere.get(order.name)) ?? null;

const sharing = (order: Order | null, { sharedNames }: Context): number | null =>
  (order?.name == null ? undefined : sharedNames.get(order.name)) ?? null;

function holds({ result: { order, block }, on }: Kept, context: Context): boolean {
  if (!areAlike(on.file, fileFindings(block, context))) return false;
  if (!order) return true;
  const { name, house } = standardOf(order, context);
  return (
    on.standard === name &&
    on.house === house &&
    on.guard === context.guard &&
    on.nearPercent === context.nearPercent &&
    on.missing === context.missing &&
    on.elsewhere === elsewhereOf(order, context) &&
    on.today === context.today &&
    on.hasFileStandard === (context.standard !== null) &&
    on.defaults === context.defaults &&
    on.stray === context.stray &&
    on.sharing === sharing(order, context) &&
    on.instruments.every(([instrument, declared]) => context.instruments.get(instrument) === declared) &&
    (on.declared === null || on.declared === declaredIn(context))
  );
}

/** Nearly all blocks have none of them. */
const areAlike = (first: readonly Finding[], second: readonly Finding[]): boolean =>
  first === second || (first.length === second.length && JSON.stringify(first) === JSON.stringify(second));

/** A place of a block as a range of the document. */
export const rangeIn = (document: LentilDocument, blockIndex: number, { line, start, end }: Place) => {
  const number = (document.starts[blockIndex] as number) + line;
  return { start: { line: number, character: start }, end: { line: number, character: end } };
};
