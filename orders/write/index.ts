/** From the model back to text: what every import writes its orders with. */
import { type Block, formatText, parseDocument } from '../../grammar';
import type { Order, Placed, Reading } from '../model';
import { resolveOrder } from '../resolve';
import { nameInText } from './figures';
import { orderInText } from './order';
import { readingInText } from './reading';

export { nameInText, oneLine, quoted } from './figures';
export { designInText } from './powers';

/** Values that come from another format stand nowhere in a text. */
const NOWHERE = { line: 0, start: 0, end: 0 } as const;

export const nowhere = <V>(value: V): Placed<V> => ({ value, place: NOWHERE });

let kept: Order | undefined;

/** An order and a reading of nothing but their first words; made on first use, since that builds the parser. */
function blank(): Order {
  kept ??= resolveOrder(parseDocument('order\n  reading').blocks[0] as Block, null).order;
  return kept;
}

/** An order that says nothing yet. */
export const blankOrder = (name: string | null): Order => ({ ...blank(), readings: [], name });

/** A reading that nothing is said of yet. */
export const blankReading = (): Reading => blank().readings[0] as Reading;

/**
 * Returns one order as text of the notation in the canonical layout, with its readings, lengths in millimetres and powers
 * in dioptres to a ten-thousandth. Read again it is the same order, apart from places and from what the model keeps no
 * figures of: warp, the eyes of a decision, and prisms that could not be told.
 * @param more further lines of the order, each checked by the caller to be one line, such as `note "…"`
 */
export function writeOrder(order: Order, more: readonly string[] = []): string {
  const lines = [
    order.name === null || order.name === '' ? 'order' : `order ${nameInText(order.name)}`,
    // A standard is one of the order's own only where it is indented.
    ...[...orderInText(order), ...more].map((line) => `  ${line}`),
    ...order.readings.flatMap(readingInText),
    ...decisionInText(order),
  ];
  return `${formatText(parseDocument(withBlankLines(lines)))}\n`;
}

function decisionInText({ decided }: Order): readonly string[] {
  if (!decided) return [];
  const { verdict, by, why } = decided;
  const words = ['decided', verdict, by && `by ${nameInText(by)}`, why && `"${why.replaceAll('"', '""')}"`];
  return [words.filter(Boolean).join(' ')];
}

/** A blank line before each reading, as slips are written. */
const withBlankLines = (lines: readonly string[]): string =>
  lines.map((line) => (/^reading\b/.test(line) ? `\n${line}` : line)).join('\n');
