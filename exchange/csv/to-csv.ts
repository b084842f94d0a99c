/** Orders and readings out, as a table. */
import { stringify } from 'csv-stringify/browser/esm/sync';
import type { Analysis, BlockAnalysis, Eye, Instrument, Order, Reading } from '../../orders';
import { designInText } from '../../orders/write';
import { type SaidLine, saidLines } from '../../orders/write/said';
import type { Conversion, Loss, LossReason } from '../conversion';
import { lossesOf, lossesOutside } from '../parts/lost';
import { orderedParts } from '../parts/ordered';
import type { Part } from '../parts/part';
import { readParts } from '../parts/read';
import { type Column, LINE_WORDS, type LineWord, type RowWord, type Target } from './columns';
import { isByLens, type Mapping, USUAL_MAPPING } from './mapping';

/** How a table is to be written. */
export interface CsvOptions {
  /** Only the orders of this name. */
  readonly order?: string;
  /** Which columns the table has; see `readMapping`. */
  readonly mapping?: Mapping;
}

/**
 * Returns a table (RFC 4180: CRLF, a header, quotes where they are needed) with the facts that its columns ask for, in
 * millimetres, dioptres, prism dioptres (base in and base up positive) and degrees, each with the digits it was written with.
 * Source: RFC 4180; the columns are ours.
 */
export function toCsv(analysis: Analysis, { order, mapping = USUAL_MAPPING }: CsvOptions = {}): Conversion<string> {
  const rows: (readonly string[])[] = [];
  const losses: Loss[] = [];
  for (const [at, block] of analysis.blocks.entries()) {
    if (order !== undefined && block.order?.name !== order) continue;
    const firstLine = analysis.document.starts[at] as number;
    const converted = block.order
      ? convert(block, block.order, firstLine, analysis.context.instruments, mapping)
      : { result: [], losses: lossesOutside(block, firstLine) };
    for (const row of converted.result) rows.push(mapping.columns.map((column) => cell(column, row, mapping)));
    losses.push(...converted.losses);
  }
  const table = [mapping.columns.map(({ name }) => name), ...rows];
  const result = stringify(table, {
    delimiter: mapping.delimiter,
    record_delimiter: 'windows',
    // A line end inside of a field would end the row for some readers.
    quoted_match: /[\r\n]/,
  });
  return { result, losses };
}

/** What one row of the table can say. */
interface Row {
  readonly words: Partial<Record<RowWord | LineWord, string>>;
  /** With whether the fact was read. */
  readonly facts: readonly (readonly [part: Part, isRead: boolean])[];
}

function convert(
  block: BlockAnalysis,
  order: Order,
  firstLine: number,
  instruments: ReadonlyMap<string, Instrument>,
  mapping: Mapping,
): Conversion<readonly Row[]> {
  const said = saidLines(block.block);
  const ordered = orderedParts(order, block.block);
  const words = { order: order.name ?? '', ...lineCells(order, said) };
  const read = new Map(order.readings.map((one) => [one, readParts(one, block.block, instruments)]));
  const make = isByLens(mapping) ? rowsByLens : rowsByReading;
  const rows = make(order, words, ordered, (one) => read.get(one) ?? []);
  const carried = new Set(
    rows.flatMap(({ facts }) =>
      facts
        .filter(([part, isRead]) => mapping.columns.some(({ target }) => holds(target, part, isRead, mapping)))
        .map(([part]) => part),
    ),
  );
  const told = lossesOf(block, firstLine, {
    parts: [...ordered, ...[...read.values()].flatMap((lenses) => lenses.flatMap(({ parts }) => parts))],
    part: (part) => (carried.has(part) ? (part.workedOut ? 'worked-out' : null) : 'no-place'),
    line: (line) => fateOf(line, mapping, order),
  });
  return { result: rows, losses: [...told, ...headerLosses(order, firstLine, mapping)] };
}

type ReadOf = (reading: Reading) => ReturnType<typeof readParts>;
type Words = Row['words'];

/** A row for each lens as ordered, one for the pair, and the same for each reading and repeat. */
function rowsByLens(order: Order, words: Words, ordered: readonly Part[], readOf: ReadOf): readonly Row[] {
  const rows = ([null, 'R', 'L'] as const).flatMap((eye): Row[] => {
    const facts = ordered.filter((part) => part.eye === eye).map((part) => [part, false] as const);
    if (eye !== null && facts.length === 0) return [];
    return [{ words: eye === null ? words : { order: words.order ?? '', eye }, facts }];
  });
  const read = order.readings.flatMap((reading, at): readonly Row[] => {
    const head = { order: words.order ?? '', reading: String(at + 1), ...headCells(reading) };
    const lenses = readOf(reading);
    if (lenses.length === 0) return [{ words: head, facts: [] }];
    return lenses.map(({ eye, repeat, parts, with: instrument }) => ({
      words: { ...head, with: instrument ?? '', eye: eye ?? '', repeat: repeat === 0 ? '' : String(repeat) },
      facts: parts.map((part) => [part, true] as const),
    }));
  });
  return [...rows, ...read];
}

/** A row for each reading, or one where there is none; what was ordered stands in each of them. */
function rowsByReading(order: Order, words: Words, ordered: readonly Part[], readOf: ReadOf): readonly Row[] {
  const facts = ordered.map((part) => [part, false] as const);
  if (order.readings.length === 0) return [{ words, facts }];
  return order.readings.map((reading) => {
    const first = readOf(reading).filter(({ repeat }) => repeat === 0);
    const instruments = new Set(first.map((lens) => lens.with));
    const read = first.filter((lens) => instruments.size < 2 || lens.with === reading.with);
    return {
      words: { ...words, ...headCells(reading) },
      facts: [...facts, ...read.flatMap(({ parts }) => parts.map((part) => [part, true] as const))],
    };
  });
}

const headCells = ({ date, time, by, with: instrument, stage }: Reading): Words => ({
  date: date ?? '',
  time: time ?? '',
  by: by ?? '',
  with: instrument ?? '',
  stage: stage === 'final' ? '' : stage,
});

/** The free lines of an order; several of one kind stand under one another in their cell. */
function lineCells(order: Order, said: readonly SaidLine[]): Words {
  const own = (word: LineWord): string =>
    said
      .filter((line) => line.section === 'body' && line.word === word)
      .map(({ rest }) => rest)
      .join('\n');
  return { ...Object.fromEntries(LINE_WORDS.map((word) => [word, own(word)])), design: designCell(order) };
}

function designCell({ lenses }: Order): string {
  const words = (eye: Eye): string => {
    const { design } = lenses[eye];
    return design ? designInText(design.value) : '';
  };
  const [right, left] = [words('R'), words('L')];
  if (right === left) return right;
  return [right && `R ${right}`, left && `L ${left}`].filter(Boolean).join(' ');
}

/** Whether a column is the one for a fact. In a table by lens the eye and the reading are those of the row. */
function holds(target: Target, { code, eye, at }: Part, isRead: boolean, mapping: Mapping): boolean {
  if (target.kind !== 'fact' || target.code !== code || at !== null) return false;
  if (!isByLens(mapping)) return target.eye === eye && target.isRead === isRead;
  const hasReading = mapping.columns.some((one) => one.target.kind === 'row' && one.target.word === 'reading');
  return hasReading || target.isRead === isRead;
}

function cell({ target }: Column, row: Row, mapping: Mapping): string {
  if (target.kind !== 'fact') return harmless(row.words[target.word] ?? '');
  const found = row.facts.find(([part, isRead]) => holds(target, part, isRead, mapping));
  return found ? found[0].text.replace('.', mapping.decimal) : '';
}

/** Some programs take a text that begins so for a formula. Figures begin with a sign at most, and stay as they are. */
const harmless = (text: string): string => (/^'*[=@]/.test(text) ? `'${text}` : text);

function fateOf({ kind, word, section }: SaidLine, mapping: Mapping, { name }: Order): LossReason | null {
  if (kind === 'reading' || kind === 'end' || (section === 'reading' && word === 'zero')) return null;
  if (kind === 'order') return name === null || hasColumn(mapping, 'order') ? null : 'no-place';
  const line = LINE_WORDS.find((one) => one === word);
  return section === 'body' && line && hasColumn(mapping, line) ? null : 'no-place';
}

const hasColumn = ({ columns }: Mapping, word: RowWord | LineWord): boolean =>
  columns.some(({ target }) => target.kind !== 'fact' && target.word === word);

function headerLosses({ name, readings }: Order, firstLine: number, mapping: Mapping): readonly Loss[] {
  return readings.flatMap((reading) =>
    Object.entries(headCells(reading)).flatMap(([word, value]): Loss[] => {
      if (value === '' || hasColumn(mapping, word as RowWord)) return [];
      return [
        { what: `${word} ${value}`, why: 'no-place', order: name, eye: null, line: firstLine + reading.place.line },
      ];
    }),
  );
}
