/** One row of a table: whose it is, and what it says. */

import { type Eye, isDay, meaningsOf } from '../../orders';
import { EYES } from '../../orders/model';
import type { Loss, LossReason, Refusal } from '../conversion';
import { checkedFigure, isLonely, powerProblem } from '../parts/checked';
import { EITHER_CODES, PAIR_CODES, PART_UNITS, type PartCode, partInWords } from '../parts/part';
import { type Fact, ORDER_CODES, READING_CODES, type ReadingHead } from '../parts/to-order';
import { type Column, LINE_WORDS, type RowWord } from './columns';
import { type Gathering, type OrderDraft, takeOrdered, takeRead } from './gathering';
import { lineFrom } from './line-cells';
import { isByLens, type Mapping } from './mapping';

export interface Told {
  readonly losses: Loss[];
  readonly refused: Refusal[];
}

/** Thrown where a row cannot be placed at all; it never leaves this file. */
class Misplaced extends Error {}

type Cells = readonly (readonly [Column, string])[];

/** Puts a row where it belongs. `line` is counted from 1. */
export function readRow(cells: Cells, line: number, mapping: Mapping, gathering: Gathering, told: Told): void {
  try {
    place(cells, line, mapping, gathering, told);
  } catch (error) {
    if (!(error instanceof Misplaced)) throw error;
    told.refused.push({ message: error.message, where: `line ${line}` });
  }
}

function place(cells: Cells, line: number, mapping: Mapping, gathering: Gathering, told: Told): void {
  const word = (wanted: RowWord): string | null => wordIn(cells, wanted);
  const eyes = eyesOf(word('eye'));
  const head = headOf(word);
  const order = gathering.order(word('order'));
  const lose = (what: string, why: LossReason, eye: Eye | null = null): void => {
    told.losses.push({ what, why, order: order.name, eye, line: line - 1 });
  };
  takeLines(cells, order, lose);
  const byLens = isByLens(mapping);
  const reading = word('reading');
  let isReading = false;
  for (const isRead of [false, true]) {
    const own = cells.filter(
      ([{ target }]) => target.kind === 'fact' && (reading !== null || target.isRead) === isRead,
    );
    for (const eye of byLens ? eyes : ([...EYES, null] as const)) {
      const forEye = own.filter(([{ target }]) => target.kind === 'fact' && (byLens || target.eye === eye));
      const facts = factsOf(forEye, eye, isRead, mapping, line, lose, told.refused);
      if (isRead && (facts.length > 0 || reading !== null)) {
        takeRead(order, keyOf(reading, head), head, eye, facts);
        isReading = true;
      } else if (!isRead && !takeOrdered(order, facts))
        throw new Misplaced(`order ${order.name} is given otherwise in an earlier row`);
    }
  }
  if (!isReading) for (const own of OF_READING) if (word(own) !== null) lose(`${own} ${word(own)}`, 'unclear');
}

/** What only a reading has. */
const OF_READING: readonly RowWord[] = ['repeat', 'date', 'time', 'by', 'with', 'stage'];

const wordIn = (cells: Cells, wanted: RowWord): string | null =>
  // A mark before a sign of equality keeps other programs from taking the text for a formula.
  cells.find(([{ target }]) => target.kind === 'row' && target.word === wanted)?.[1].replace(/^'(?='*[=@])/, '') ??
  null;

const keyOf = (reading: string | null, head: ReadingHead): string =>
  reading === null ? JSON.stringify(head) : `number ${reading}`;

function eyesOf(text: string | null): readonly (Eye | null)[] {
  if (text === null) return [null];
  const meaning = meaningsOf(text).find(({ role }) => role === 'eye')?.word;
  if (meaning === 'R' || meaning === 'L') return [meaning];
  if (meaning === 'both') return EYES;
  throw new Misplaced(`there is no eye called “${text}”`);
}

function headOf(word: (wanted: RowWord) => string | null): ReadingHead {
  const [date, time, stage] = [word('date'), word('time'), word('stage') ?? 'final'];
  if (date !== null && !isDay(date)) throw new Misplaced(`date ${date} is not a day as 2026-11-24`);
  if (time !== null && !/^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/.test(time))
    throw new Misplaced(`time ${time} is not a time of day as 14:30`);
  if (stage !== 'final' && stage !== 'edged' && stage !== 'uncut')
    throw new Misplaced(`there is no stage called ${stage}`);
  return { date, time, by: word('by'), with: word('with'), stage };
}

type Lose = (what: string, why: LossReason, eye?: Eye | null) => void;

/** The facts of one lens. Where a cell cannot be read the power of its lens is not taken, since it would be another one. */
function factsOf(
  cells: Cells,
  eye: Eye | null,
  isRead: boolean,
  { decimal }: Mapping,
  line: number,
  lose: Lose,
  refused: Refusal[],
): readonly Fact[] {
  const values = new Map<PartCode, number | string>();
  const held = isRead ? READING_CODES : ORDER_CODES;
  let isWhole = true;
  for (const [{ target, name }, text] of cells) {
    if (target.kind !== 'fact') continue;
    const { code } = target;
    const isPlaced = eye === null ? PAIR_CODES.has(code) || EITHER_CODES.has(code) : !PAIR_CODES.has(code);
    const said = partInWords({ code, text, at: null });
    if (!held.has(code)) lose(said, 'no-place', eye);
    else if (!isPlaced) lose(said, 'unclear', eye);
    else {
      const value = valueOfCell(code, decimal === ',' ? text.replace(',', '.') : text);
      if ('error' in value) {
        refused.push({ message: `column “${name}”: ${value.error}`, where: `line ${line}` });
        isWhole &&= !POWER.has(code);
        continue;
      }
      if (value.rounded) lose(said, 'rounded', eye);
      values.set(code, value.value);
    }
  }
  return [...wholeOnly(values, eye, isWhole, lose)].map(([code, value]) => ({ code, eye, value }));
}

const POWER = new Set<PartCode>(['sphere', 'cylinder', 'axis']);

/** The values without a power that is not given in full, and without what cannot stand by itself. */
function wholeOnly(
  values: Map<PartCode, number | string>,
  eye: Eye | null,
  isWhole: boolean,
  lose: Lose,
): ReadonlyMap<PartCode, number | string> {
  const power = new Map([...values].filter((entry): entry is [PartCode, number] => POWER.has(entry[0])));
  // An axis without a cylinder, and a cylinder without an axis, are a lens that was not recorded in full.
  const isAxisAlone = power.has('axis') && !power.has('cylinder');
  if (!isWhole || isAxisAlone || powerProblem(power)) {
    const said = [...power].map(([code, value]) => `${code} ${value}`).join(', ');
    if (said !== '') lose(said, 'unclear', eye);
    for (const code of POWER) values.delete(code);
  } else if (!values.get('cylinder')) values.delete('axis');
  for (const code of values.keys()) {
    if (!isLonely(code, values)) continue;
    lose(`${code} ${values.get(code)}`, 'unclear', eye);
    values.delete(code);
  }
  return values;
}

function valueOfCell(
  code: PartCode,
  text: string,
): { readonly value: number | string; readonly rounded: boolean } | { readonly error: string } {
  if (PART_UNITS[code] !== 'words') return checkedFigure(code, text);
  const isKnown = text === 'passed' || text === 'failed';
  return isKnown ? { value: text, rounded: false } : { error: `“${text.slice(0, 40)}” is neither passed nor failed` };
}

function takeLines(cells: Cells, order: OrderDraft, lose: Lose): void {
  for (const [{ target }, text] of cells) {
    const word = target.kind === 'line' ? LINE_WORDS.find((one) => one === target.word) : undefined;
    if (!word) continue;
    for (const part of text.split(/\r\n|\r|\n/)) {
      if (part.trim() === '') continue;
      const { line, asWords } = lineFrom(word, part.trim().replace(/^'(?='*[=@])/, ''));
      if (asWords) lose(`${word} ${part.trim()}`, 'as-words');
      order.lines.add(line);
    }
  }
}
