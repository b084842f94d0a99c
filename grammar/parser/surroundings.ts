/** What is told of a line apart from its facts: an open quote, letters from other keyboards, a comment that may be none. */
import type { IToken } from 'chevrotain';
import { contentEnd } from '../text';
import * as T from '../tokens';
import type { LineNode, Problem } from '../tree';

type Tell = (problem: Problem) => void;

/** An open quote runs to the end of the line, so only the last token can be one. */
export function tellQuote(tokens: readonly IToken[], told: readonly Problem[], tell: Tell): void {
  const last = tokens.at(-1);
  if (!last || !isQuoted(last)) return;
  const mark = T.missingQuote(last.image);
  const start = last.startOffset;
  const end = T.endOf(last);
  // Inside a text that was not taken the quote is no matter of its own.
  if (mark === null || told.some((problem) => problem.start <= start && problem.end >= end)) return;
  tell({ code: 'quote-open', start, end, data: { mark } });
}

const isQuoted = ({ tokenType, image }: IToken): boolean =>
  tokenType === T.Text || (tokenType === T.NameToken && /^["“„«]/.test(image));

const NOT_ASCII = /[^\0-\x7F]/;

/** Letters and blanks that look like the usual ones and are not: × for x, Cyrillic х, no-break and thin spaces. */
const LOOKALIKE = /[×хХ\u00A0\u2000-\u200B\u202F\u3000]/;

/** Tells once of letters and blanks from another keyboard, wherever they stand outside quotes. */
export function tellLookalikes(content: string, tell: Tell): void {
  if (!NOT_ASCII.test(content)) return;
  const at = content
    .replace(/"[^"]*"?|[“„][^“”]*[“”]?|«[^»]*»?/g, (quoted) => '"'.repeat(quoted.length))
    .search(LOOKALIKE);
  if (at >= 0) tell({ code: 'look-alike', start: at, end: at + 1 });
}

/** The `#7` that was meant as text: a comment mark with no blank behind it, after free words. */
export function lostText(node: LineNode, line: string, cut: number): Problem | null {
  if (cut >= line.length || (node.kind !== 'text' && node.kind !== 'tint')) return null;
  if (!/^#[^\s#]/.test(line.slice(cut))) return null;
  const end = contentEnd(line);
  return { code: 'text-cut', start: cut, end, data: { lost: line.slice(cut, end) } };
}
