/** What an order rests on besides its own lines, and whether all of that was understood. */
import type { Block, Problem } from '../../grammar';
import type { Context } from '../context';
import type { Evaluation } from '../evaluate';
import type { Finding, Place } from '../finding';
import type { Order } from '../model';
import { instrumentsUsed } from './bench/instruments-used';
import { ruleOf } from './catalogue';
import { barsAcceptance } from './standing';

const NONE: readonly Finding[] = [];

/** One finding for each block that a read order rests on and in which something was not understood. */
export function groundFindings(order: Order, { house }: Evaluation, context: Context): readonly Finding[] {
  const { readings, place, standard } = order;
  if (readings.length === 0) return NONE;
  let found: Finding[] | null = null;
  const tell = (what: string, name: string | null, at: Place, code: string | null): void => {
    if (code === null) return;
    found ??= [];
    found.push({ code: 'rests-on-unread', level: 'error', data: { what, name, code }, eye: null, ...at });
  };
  if (context.defaults) tell('defaults', null, place, unreadIn(context.defaults));
  if (house) tell('house', house.name, standard?.place ?? place, unreadIn(house.block));
  for (const reading of readings)
    for (const { instrument, place: named } of instrumentsUsed(reading, context))
      tell('instrument', instrument.name, named, firstBarring(instrument.problems));
  return found ?? NONE;
}

const UNREAD = Symbol('unread');

/** The code of the first thing in a block that was not understood, worked out once; null where all was. */
function unreadIn(block: Block): string | null {
  let known = block.memo.get(UNREAD) as string | null | undefined;
  if (known === undefined) {
    known = firstBarring(block.lines.flatMap((line) => line.parsed(block.kind).problems));
    block.memo.set(UNREAD, known);
  }
  return known;
}

function firstBarring(problems: readonly Problem[]): string | null {
  for (const { code, data = {} } of problems) {
    const level = ruleOf(code)?.level ?? 'error';
    if (barsAcceptance({ code, level: typeof level === 'function' ? level(data, 'other') : level })) return code;
  }
  return null;
}
