/** Words of a cell as a line of an order. */
import { parseLine } from '../../orders';
import { oneLine, quoted } from '../../orders/write';
import type { LineWord } from './columns';

/** Lines that take any words. */
const FREE: readonly LineWord[] = ['note', 'coating', 'ref'];

/**
 * The line that the words make. Where the notation does not take them as such a line with nothing to tell, they become a
 * note: whatever stands in a cell, it is one line and never another one.
 */
export function lineFrom(word: LineWord, text: string): { readonly line: string; readonly asWords: boolean } {
  if (FREE.includes(word)) return { line: `${word} ${quoted(text)}`, asWords: false };
  const line = `${word} ${oneLine(text)}`;
  const { node, problems } = parseLine(line);
  if (text.length <= 200 && !text.includes('#') && node.kind === word && problems.length === 0)
    return { line, asWords: false };
  return { line: `note ${quoted(`${word} ${text}`)}`, asWords: true };
}
