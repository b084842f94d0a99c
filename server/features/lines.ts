import { commentStart } from '../../grammar';
import type { Snapshot } from '../snapshot';

/** Column after the last character of a line that is neither blank nor comment. */
export const contentEnd = (text: string): number => text.slice(0, commentStart(text)).trimEnd().length;

/** The last line that is neither blank nor a comment; those at the end of a block mostly belong to the one below. */
export function lastLine(lines: readonly string[]): number {
  let last = lines.length - 1;
  while (last > 0 && contentEnd(lines[last] as string) === 0) last--;
  return last;
}

/** The line end that the document uses. */
export const lineEndOf = ({ document }: Snapshot): string => document.line(0)?.end || '\n';
