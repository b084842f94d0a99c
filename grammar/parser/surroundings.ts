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

/** Lines that hold figures, of which one may have ended up behind a comment mark. */
const WITH_FIGURES = new Set<LineNode['kind']>([
  ...(['power', 'powers', 'add', 'prism', 'pd', 'centres', 'eye-figure', 'clock', 'design', 'settings'] as const),
  ...(['decentre', 'segment', 'slab', 'unknown'] as const),
]);

const NUMBER = '(?:[-+\u2212]\\s?)?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)(?![.,]?\\d)';
const EYES = 'R|L|OD|OS|OU|RE|LE|BE|right|left|both';
const BASES = 'BI|BO|BU|BD|base|in|out|up|down';
const CLAUSES = 'x|ax|axis|add|prism|near|int|intermediate|lines|thin|wide|sph|cyl|pd|again';

/** A figure with a sign and decimals, one with its base, or an axis, at the very beginning. */
const STARTS_AS_FIGURE = new RegExp(
  `^(?:[-+\u2212]\\s?\\d*[.,]\\d+|${NUMBER}\\s*(?:BI|BO|BU|BD)\\b|${NUMBER}\\s+base\\s+(?:${NUMBER}|in|out|up|down)\\b|[x\u00D7]\\s*\\d{1,3}\\b)`,
  'i',
);
/** Nothing but figures with the words that belong to them. */
const PART = `(?:${NUMBER}|plano|DS|DC|mm|D|deg|\u00B0|\u0394|[/@,;&]|->|\u2192|(?:${EYES}|${BASES}|${CLAUSES})(?![\\p{L}-]))`;
const ONLY_FIGURES = new RegExp(`^${PART}(?:\\s*${PART})*$`, 'iu');
const HAS_FIGURE = /\d/;
const DATE = /^\d{4}-\d|^\d{1,2}:\d/;

/** `x 022 # -0.75`, `prism R 0 L 0 #3 BU`: a comment that is nothing but notation, behind a line that holds figures. */
export function hiddenFigures(node: LineNode, line: string, cut: number): Problem | null {
  if (cut >= line.length || !WITH_FIGURES.has(node.kind)) return null;
  const end = contentEnd(line);
  const comment = line.slice(cut, end).replace(/^#+\s*/, '');
  if (
    !HAS_FIGURE.test(comment) ||
    DATE.test(comment) ||
    !(STARTS_AS_FIGURE.test(comment) || ONLY_FIGURES.test(comment))
  )
    return null;
  return { code: 'figures-in-remark', start: cut, end, data: { lost: comment } };
}
