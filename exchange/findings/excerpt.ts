/** A line of the source with a caret line under it, fit for a terminal. */

/** Columns shown of a long line. */
const WIDTH = 100;

/** Characters that would move the cursor, colour the screen or turn the direction of writing. */
const UNSAFE = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/** Text from a file as it may be shown: tabs as single blanks, so that columns stay columns, other controls as a mark. */
export const harmless = (text: string): string => text.replace(UNSAFE, (one) => (one === '\t' ? ' ' : '\ufffd'));

export interface Excerpt {
  readonly line: string;
  readonly carets: string;
}

/** @param start first marked column, in UTF-16 units, and `end` the one after the last; an empty span marks one column */
export function excerpt(text: string, start: number, end: number): Excerpt {
  const from = start < WIDTH - 10 ? 0 : start - WIDTH / 2;
  const to = Math.min(text.length, from + WIDTH);
  const [before, after] = [from > 0 ? '…' : '', to < text.length ? '…' : ''];
  const marked = Math.max(1, Math.min(end, Math.max(to, start + 1)) - start);
  return {
    line: `${before}${harmless(text.slice(from, to)).trimEnd()}${after}`,
    carets: `${' '.repeat(before.length + start - from)}${'^'.repeat(marked)}`,
  };
}
