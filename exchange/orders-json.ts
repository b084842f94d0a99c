/** Orders and readings out, as JSON of our own: every fact with its written digits, every other line in its words. */
import type { Analysis, BlockAnalysis, Eye, Instrument, Order } from '../orders';
import { type SaidLine, saidLines } from '../orders/write/said';
import type { Conversion, Loss } from './conversion';
import { lossesOf, lossesOutside } from './parts/lost';
import { orderedParts } from './parts/ordered';
import type { Part, PartCode } from './parts/part';
import { readParts } from './parts/read';

/** Figures as text without a plus, so that `-4.50` stays what was written; the units are those of the schema. */
export type FactsJson = Readonly<Partial<Record<PartCode, string>>>;

/** What was read of one lens. */
export interface ReadLensJson {
  /** Null for what belongs to the pair. */
  readonly eye: Eye | null;
  /** 0, and from 1 for repeats. */
  readonly repeat: number;
  readonly with: string | null;
  /** Point of the lens, where it is said. */
  readonly at: string | null;
  readonly facts: FactsJson;
}

/** One lens as ordered. */
export interface OrderedJson {
  readonly name: string | null;
  readonly R: FactsJson;
  readonly L: FactsJson;
  readonly pair: FactsJson;
  /** Lines of the order that say something else or more, in the words of their writer. */
  readonly lines: readonly string[];
  readonly readings: readonly {
    readonly date: string | null;
    readonly time: string | null;
    readonly by: string | null;
    readonly with: string | null;
    readonly stage: 'uncut' | 'edged' | 'final';
    readonly lenses: readonly ReadLensJson[];
    readonly lines: readonly string[];
  }[];
}

/** The orders of a file with their readings. */
export interface OrdersJson {
  readonly lentil: 1;
  readonly orders: readonly OrderedJson[];
}

/**
 * Returns the orders of a text with their readings, in millimetres, dioptres, prism dioptres (base in and base up positive)
 * and degrees. Comments, and blocks that are no orders, are told as losses.
 * Source: the form is ours; `schema/orders.schema.json` describes it.
 */
export function toOrdersJson(analysis: Analysis, { order }: { readonly order?: string } = {}): Conversion<OrdersJson> {
  const orders: OrderedJson[] = [];
  const losses: Loss[] = [];
  for (const [at, block] of analysis.blocks.entries()) {
    if (order !== undefined && block.order?.name !== order) continue;
    const firstLine = analysis.document.starts[at] as number;
    if (!block.order) losses.push(...lossesOutside(block, firstLine));
    else {
      const { result, losses: own } = convert(block, block.order, firstLine, analysis.context.instruments);
      orders.push(result);
      losses.push(...own);
    }
  }
  return { result: { lentil: 1, orders }, losses };
}

function convert(
  block: BlockAnalysis,
  order: Order,
  firstLine: number,
  instruments: ReadonlyMap<string, Instrument>,
): Conversion<OrderedJson> {
  const ordered = orderedParts(order, block.block);
  const read = order.readings.map((reading) => readParts(reading, block.block, instruments));
  const parts = [...ordered, ...read.flatMap((lenses) => lenses.flatMap((lens) => lens.parts))];
  const inParts = new Set(parts.map(({ place }) => place.line));
  const others = saidLines(block.block).filter(
    (said) => isOther(said) && (!inParts.has(said.line) || said.details.length > 0),
  );
  const ends = [...order.readings.map(({ place }) => place.line), Number.POSITIVE_INFINITY];
  const result: OrderedJson = {
    name: order.name,
    R: factsOf(ordered.filter(({ eye }) => eye === 'R')),
    L: factsOf(ordered.filter(({ eye }) => eye === 'L')),
    pair: factsOf(ordered.filter(({ eye }) => eye === null)),
    lines: others.filter(({ section }) => section !== 'reading').map(({ text }) => text),
    readings: order.readings.map(({ date, time, by, with: instrument, stage }, at) => ({
      date,
      time,
      by,
      with: instrument,
      stage,
      lenses: (read[at] ?? []).flatMap((lens) => lensesOf(lens.parts).map((one) => ({ ...headOf(lens), ...one }))),
      lines: others
        .filter(({ section, line }) => section === 'reading' && line > (ends[at] ?? 0) && line < (ends[at + 1] ?? 0))
        .map(({ text }) => text),
    })),
  };
  const losses = lossesOf(block, firstLine, {
    parts,
    part: ({ workedOut }) => (workedOut ? 'worked-out' : null),
    line: () => null,
    details: true,
  });
  return { result, losses };
}

const headOf = ({ eye, repeat, with: instrument }: ReturnType<typeof readParts>[number]) => {
  return { eye, repeat, with: instrument };
};

/** One entry for each point of the lens. */
function lensesOf(parts: readonly Part[]): readonly Pick<ReadLensJson, 'at' | 'facts'>[] {
  const points = [...new Set(parts.map(({ at }) => at))];
  return points.map((at) => ({ at, facts: factsOf(parts.filter((part) => part.at === at)) }));
}

const factsOf = (parts: readonly Part[]): FactsJson => Object.fromEntries(parts.map(({ code, text }) => [code, text]));

/** Lines whose whole meaning is not in the facts and headers already. */
const isOther = ({ kind, text }: SaidLine): boolean =>
  text !== '' && kind !== 'order' && kind !== 'reading' && kind !== 'end' && kind !== 'unknown';
