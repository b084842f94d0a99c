/** What was not understood of the lines that an order rests on and that stand outside it. */
import type { Block } from '../../grammar';
import { type Context, standardOf } from '../context';
import type { Finding, Level } from '../finding';
import type { Order } from '../model';
import type { Ground } from './blocks/rests-on-unclear';
import { barsAcceptance } from './standing';
import { writingFindings } from './writing-findings';

interface Doubt {
  readonly typed: string;
  readonly level: Level;
}

const DOUBT = Symbol('doubt');
const NONE: readonly Finding[] = [];

/** One finding for each block with a line that is not clear, at the name of the order. */
export function groundFindings(order: Order, context: Context): readonly Finding[] {
  let told: Finding[] | null = null;
  const tell = (ground: Ground, typed: string, level: Level): void => {
    told ??= [];
    told.push({ code: 'rests-on-unclear', level, data: { ground, typed, level }, eye: null, ...order.place });
  };
  const look = (ground: Ground, block: Block | null | undefined): void => {
    const doubt = block && doubtIn(block);
    if (doubt) tell(ground, doubt.typed, doubt.level);
  };
  if (context.stray !== null) tell('file', context.stray, 'error');
  look('defaults', context.defaults);
  look('tolerance', standardOf(order, context).house?.block);
  if (context.instruments.size > 0)
    for (const name of instrumentsOf(order)) look('instrument', context.instruments.get(name)?.block);
  return told ?? NONE;
}

function instrumentsOf({ readings }: Order): ReadonlySet<string> {
  const names = new Set<string>();
  for (const reading of readings) {
    if (reading.with !== null) names.add(reading.with);
    for (const { with: name } of reading.measurements) if (name !== null) names.add(name);
  }
  return names;
}

/** The line of a block that is least clear; looked for once in each block. */
function doubtIn(block: Block): Doubt | null {
  let known = block.memo.get(DOUBT) as Doubt | null | undefined;
  if (known === undefined) {
    const findings = writingFindings(block);
    const worst = findings.find(barsAcceptance) ?? findings.find(({ level }) => level === 'warning');
    known = worst
      ? {
          typed: (block.lines[worst.line]?.text ?? '').trim().replaceAll(/\s+/g, ' '),
          level: barsAcceptance(worst) ? 'error' : 'warning',
        }
      : null;
    block.memo.set(DOUBT, known);
  }
  return known;
}
