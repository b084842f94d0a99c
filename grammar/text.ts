/**
 * Lines and line ends. This is the only place that knows them: LF, CRLF and CR end a line and nothing else does
 * (U+2028 and friends are ordinary characters); a leading byte order mark belongs to the text but is never counted in columns.
 * Columns are UTF-16 code units, as JavaScript strings and the language-server protocol count them.
 */

export type LineEnd = '' | '\n' | '\r\n' | '\r';

export interface RawLine {
  /** The line without its end. */
  readonly text: string;
  readonly end: LineEnd;
}

export interface Position {
  /** Zero-based line. */
  readonly line: number;
  /** Zero-based column in UTF-16 code units. */
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

const LINE_FEED = 10;
export const BYTE_ORDER_MARK = '\uFEFF';

/** Splits a text into its lines; the last line has an empty end. A text without any line end is one line. */
export function splitLines(text: string): RawLine[] {
  const lines: RawLine[] = [];
  const ends = new LineEnds(text);
  for (let start = 0; start <= text.length; ) {
    const at = ends.from(start);
    const end = lineEndAt(text, at);
    lines.push({ text: text.slice(start, at), end });
    start = at + (end.length || 1);
  }
  return lines;
}

/** Finds the ends of lines from the top down. Each mark is looked for apart, which is far faster than a look at every character. */
export class LineEnds {
  readonly #text: string;
  #feed = -1;
  #return = -1;

  constructor(text: string) {
    this.#text = text;
  }

  /** Where the line that holds a place ends; places may only go up. */
  from(start: number): number {
    if (this.#feed < start) this.#feed = this.#next('\n', start);
    if (this.#return < start) this.#return = this.#next('\r', start);
    return Math.min(this.#feed, this.#return);
  }

  #next(mark: string, start: number): number {
    const at = this.#text.indexOf(mark, start);
    return at < 0 ? this.#text.length : at;
  }
}

/** The line end that stands at a place; empty at the end of the text. */
export function lineEndAt(text: string, at: number): LineEnd {
  if (at >= text.length) return '';
  if (text.charCodeAt(at) === LINE_FEED) return '\n';
  return text.charCodeAt(at + 1) === LINE_FEED ? '\r\n' : '\r';
}

/** Takes a leading byte order mark off. */
export function stripByteOrderMark(text: string): { readonly mark: boolean; readonly text: string } {
  return text.startsWith(BYTE_ORDER_MARK) ? { mark: true, text: text.slice(1) } : { mark: false, text };
}

export const isBlank = (code: number): boolean =>
  code === 32 ||
  code === 9 ||
  code === 0xa0 ||
  (code >= 0x2000 && code <= 0x200b) ||
  code === 0x202f ||
  code === 0x3000;

/** Number of blanks before the first other character; the length of the line when there is none. */
export function indentOf(text: string, start = 0): number {
  let at = start;
  while (at < text.length && isBlank(text.charCodeAt(at))) at++;
  return at - start;
}

/** Where a line, or its part up to a column, ends without the blanks at its end; only what `isBlank` knows counts as one. */
export function contentEnd(text: string, upTo = text.length): number {
  let end = upTo;
  while (end > 0 && isBlank(text.charCodeAt(end - 1))) end--;
  return end;
}

/**
 * Column at which the comment of a line starts, or the line's length. `#` starts a comment when it begins the line
 * or follows a blank; inside quotes it does not.
 */
export function commentStart(text: string): number {
  if (text.indexOf('#') < 0) return text.length;
  let quote = '';
  for (let at = 0; at < text.length; at++) {
    const character = text[at] as string;
    if (quote !== '') {
      if (character === quote || (quote === '”' && character === '“')) quote = '';
    } else if (character === '"') quote = '"';
    else if (character === '“' || character === '„') quote = '”';
    else if (character === '«') quote = '»';
    else if (character === '#' && (at === 0 || isBlank(text.charCodeAt(at - 1)))) return at;
  }
  return text.length;
}
