/** What is looked at once a line has been read: words still without a value, quotes still open, keys of other keyboards. */
import type { IToken } from 'chevrotain';
import type { Tell } from '../figures';
import * as T from '../tokens';
import type { LineNode, Span, Word } from '../tree';
import { spanOf } from './amounts';

/** Tells of a word that still waits for its value, once for a line. */
export function tellMissing(node: LineNode, head: Word, tell: Tell): void {
  const waiting = firstWaiting(node, head);
  if (waiting) tell({ code: 'value-missing', start: waiting.start, end: waiting.end, data: { word: head.word } });
}

function firstWaiting(node: LineNode, head: Word): Span | null {
  switch (node.kind) {
    case 'power':
      return node.entries.find(({ power }) => power === null) ?? null;
    case 'add':
    case 'clock':
    case 'segment':
    case 'design':
    case 'lens':
      return node.entries.length === 0 ? head : null;
    case 'prism':
    case 'decentre':
      return node.entries.length === 0 ? head : (node.entries.find(({ value }) => value.length === 0) ?? null);
    case 'eye-figure':
    case 'slab':
      // `thinning none` says all there is to say.
      if (node.entries.length === 0) return node.kind === 'eye-figure' && node.which === 'thinning' ? null : head;
      return node.entries.find(({ value }) => value === null) ?? null;
    case 'settings':
      if (node.entries.length === 0) return head;
      return node.entries.flatMap(({ value }) => value).find(({ figure }) => figure === null) ?? null;
    case 'pd':
      return isEmpty(node.distance) && isEmpty(node.near) ? head : null;
    case 'centres':
      return isEmpty(node.distance) ? head : null;
    case 'figure':
      return node.figure ? null : head;
    case 'choice':
      return node.choice ? null : head;
    case 'standard':
    case 'instrument':
    case 'tolerance':
      return node.name ? null : head;
    default:
      return null;
  }
}

const isEmpty = (pd: { readonly binocular: unknown; readonly right: unknown; readonly left: unknown }): boolean =>
  !pd.binocular && !pd.right && !pd.left;

/** Tells of a quote that runs to the end of the line. */
export function tellOpenQuote(tokens: readonly IToken[], tell: Tell): void {
  const last = tokens.at(-1);
  if (last?.tokenType === T.Text && isOpen(last.image)) tell({ code: 'quote-open', ...spanOf(last) });
}

export const isOpen = (image: string): boolean =>
  image.startsWith('"') ? image.length < 2 || !/^"(?:[^"]|"")*"$/.test(image) : !/[“”»]$/.test(image.slice(1));

/** Letters and blanks that look like the usual ones and are not: × for x, Cyrillic х, no-break and thin spaces. */
const LOOKALIKE = /[×хХ\u00A0\u2000-\u200B\u202F\u3000]/;
const NOT_ASCII = /[^\0-\x7F]/;

/** Tells once of letters and blanks from another keyboard. */
export function tellLookalikes(content: string, tell: Tell): void {
  if (!NOT_ASCII.test(content)) return;
  const at = content
    .replace(/"[^"]*"?|[“„][^“”]*[“”]?|«[^»]*»?/g, (quoted) => '"'.repeat(quoted.length))
    .search(LOOKALIKE);
  if (at >= 0) tell({ code: 'look-alike', start: at, end: at + 1 });
}

/** Tells of a `#7` that was meant as text: a comment mark with no blank behind it, after free words. */
export function tellLostText(node: LineNode, line: string, cut: number, tell: Tell): void {
  if (cut >= line.length || (node.kind !== 'text' && node.kind !== 'tint')) return;
  if (/^#[^\s#]/.test(line.slice(cut)))
    tell({ code: 'text-cut', start: cut, end: line.trimEnd().length, data: { lost: line.slice(cut).trimEnd() } });
}
