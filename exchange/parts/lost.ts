/** The losses of an export, line by line: a line that is not known to be carried is told, so none goes missing. */
import { type BlockAnalysis, ruleOf } from '../../orders';
import { type SaidLine, saidLines } from '../../orders/write/said';
import type { Loss, LossReason } from '../conversion';
import { groupBy } from './group';
import { type Part, partInWords } from './part';

export interface Carried {
  /** Every fact of the block that the export saw. */
  readonly parts: readonly Part[];
  /** What becomes of a fact; null where it is carried over whole. */
  readonly part: (part: Part) => LossReason | null;
  /** What becomes of a line that holds no such fact; null where it is carried over whole. */
  readonly line: (line: SaidLine) => LossReason | null;
  /** Whether the words beside the figures of a line are carried over; they rarely are. */
  readonly details?: boolean;
}

/**
 * All that an export does not carry over of one block.
 * @param firstLine line of the block in its document
 */
export function lossesOf(
  { block, order, findings }: BlockAnalysis,
  firstLine: number,
  carried: Carried,
): readonly Loss[] {
  const name = order?.name ?? null;
  const unclear = new Set(
    findings
      .filter(({ code, level }) => level === 'error' && ruleOf(code)?.family === 'writing')
      .map(({ line }) => line),
  );
  const partsOf = groupBy(carried.parts, ({ place }) => place.line);
  const whole = new Set<string>();
  return saidLines(block).flatMap((said): Loss[] => {
    const loss = (what: string, why: LossReason, eye: Loss['eye'] = null): Loss => {
      return { what, why, order: name, eye, line: firstLine + said.line };
    };
    const comment = said.comment === '' ? [] : [loss(said.comment, 'no-place')];
    if (said.text === '') return comment;
    if (said.kind === 'unknown' || unclear.has(said.line)) return [loss(said.text, 'unclear'), ...comment];
    const parts = partsOf.get(said.line) ?? [];
    // A line that says the same once more has no facts of its own, since they are taken from the first.
    if (parts.length > 0) whole.add(said.text);
    else if (whole.has(said.text)) return comment;
    const lost = parts.flatMap((part) => {
      const why = carried.part(part);
      return why ? [loss(partInWords(part), why, part.eye)] : [];
    });
    const why = parts.length === 0 || said.kind === 'order' ? carried.line(said) : null;
    // A line that is lost as a whole takes its details along.
    const details =
      why || parts.length === 0 || carried.details ? [] : said.details.map((word) => loss(word, 'no-place'));
    return [...(why ? [loss(said.text, why)] : []), ...lost, ...details, ...comment];
  });
}

/** Lines whose values every order takes from the defaults; what becomes of them is told there. */
const IN_EACH_ORDER = new Set([
  'R',
  'L',
  'both',
  'add',
  'prism',
  'pd',
  'near-pd',
  'height',
  'base-curve',
  'thickness',
  'frame',
  'as-worn',
  'design',
]);

/** The losses of a block that is no order, where the format holds nothing but orders and readings. */
export const lossesOutside = (block: BlockAnalysis, firstLine: number): readonly Loss[] =>
  lossesOf(block, firstLine, {
    parts: [],
    part: () => null,
    line: ({ kind, word }) =>
      kind === 'defaults' || (block.block.kind === 'defaults' && IN_EACH_ORDER.has(word ?? '')) ? null : 'no-place',
  });
