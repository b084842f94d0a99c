/** What a column of a table can hold, by the words that a mapping names it with. */
import type { Eye } from '../../orders';
import { PAIR_CODES, PART_UNITS, type PartCode } from '../parts/part';

/** Facts of the row itself: which order, which reading of it, which lens. */
export const ROW_WORDS = ['order', 'eye', 'reading', 'repeat', 'date', 'time', 'by', 'with', 'stage'] as const;
export type RowWord = (typeof ROW_WORDS)[number];

/** Lines of an order that go over in the words of their writer. */
export const LINE_WORDS = ['design', 'lens', 'coating', 'tint', 'ref', 'note'] as const;
export type LineWord = (typeof LINE_WORDS)[number];

export type Target =
  | { readonly kind: 'row'; readonly word: RowWord }
  | { readonly kind: 'line'; readonly word: LineWord }
  /** A fact of the lens of the row, or of a named eye; `isRead` is false where it is what was ordered. */
  | { readonly kind: 'fact'; readonly code: PartCode; readonly eye: Eye | null; readonly isRead: boolean };

export interface Column {
  readonly name: string;
  readonly target: Target;
}

const isRowWord = (word: string): word is RowWord => (ROW_WORDS as readonly string[]).includes(word);
const isLineWord = (word: string): word is LineWord => (LINE_WORDS as readonly string[]).includes(word);
const isCode = (word: string): word is PartCode => Object.hasOwn(PART_UNITS, word);

/** The meaning of `R sphere`, `reading L axis`, `date`, `design` …; null where there is none. */
export function targetOf(words: string): Target | null {
  const parts = words.trim().split(/\s+/);
  const last = parts.at(-1) ?? '';
  if (parts.length === 1 && isRowWord(last)) return { kind: 'row', word: last };
  if (parts.length === 1 && isLineWord(last)) return { kind: 'line', word: last };
  const isRead = parts[0] === 'reading' && parts.length > 1;
  const [eye, ...rest] = (isRead ? parts.slice(1) : parts).toReversed().slice(1);
  if (!isCode(last) || rest.length > 0 || (eye !== undefined && eye !== 'R' && eye !== 'L')) return null;
  if (eye !== undefined && PAIR_CODES.has(last)) return null;
  return { kind: 'fact', code: last, eye: eye ?? null, isRead };
}

/** The words of a target, as a mapping writes them. */
export function targetInWords(target: Target): string {
  if (target.kind !== 'fact') return target.word;
  return [target.isRead ? 'reading' : null, target.eye, target.code].filter(Boolean).join(' ');
}
