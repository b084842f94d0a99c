/** Words that may come next in a line that has begun. */
import { type EyeOrBoth, meaningsOf, VOCABULARY, type VocabularyEntry } from '../../../grammar';
import { CLAUSES, type Clause, EYE_LINES } from './clauses';
import { type Cursor, headOf, isFigure, partsBefore } from './cursor';
import type { EyeNames } from './eye-names';
import { type Offer, wordOffer } from './offer';

/** Words from a closed list, such as a choice or a design, and words that only may follow. */
export interface Following {
  readonly closed: readonly Offer[];
  readonly open: readonly Offer[];
}

export function insideLine(cursor: Cursor, eyes: EyeNames): Following {
  const parts = partsBefore(cursor.text, cursor.word.start);
  const head = headOf(parts);
  if (head === null) return { closed: [], open: [] };
  const place: Place = { cursor, parts, head, isMeasuredAgain: parts[0] === 'again', last: lastOf(parts) };
  const closed = [...choices(place), ...keys(place), ...clauses(place, true)];
  const open = [...eyeWords(place, eyes), ...clauses(place, false)];
  return { closed: closed.map((entry) => wordOffer(entry)), open };
}

interface Place {
  readonly cursor: Cursor;
  readonly parts: readonly string[];
  readonly head: string;
  readonly isMeasuredAgain: boolean;
  /** What the word would follow: the head or an eye, a figure, or a word by its canonical spelling. */
  readonly last: string;
}

const START = 'start';
const FIGURE = 'figure';

function lastOf(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  if (isFigure(last)) return FIGURE;
  if (parts.length === 1 || (parts.length === 2 && parts[0] === 'again')) return START;
  const meanings = meaningsOf(last);
  if (meanings.some(({ role }) => role === 'eye')) return START;
  if (meanings.some(({ role }) => role === 'plano' || role === 'no-cylinder' || role === 'unit')) return FIGURE;
  return (meanings.find(({ role }) => role !== 'line') ?? meanings[0])?.word ?? last;
}

const isSaid = ({ parts }: Place, { word, also }: VocabularyEntry): boolean =>
  [word, ...also].some((spelling) => parts.includes(spelling.toLowerCase(), 1));

const choices = (place: Place): VocabularyEntry[] =>
  place.parts.length > 1 ? [] : VOCABULARY.filter(({ role, of }) => role === 'choice' && of.includes(place.head));

function keys(place: Place): VocabularyEntry[] {
  const own = VOCABULARY.filter(({ role, of }) => role === 'key' && of.includes(place.head));
  const isWaiting = own.some(({ word }) => word === place.last);
  return isWaiting ? [] : own.filter((entry) => !isSaid(place, entry));
}

/** Eyes that the line has not named yet; behind an eye its value is wanted, and another line has the other eye’s power. */
function eyeWords(place: Place, eyes: EyeNames): Offer[] {
  const { head, parts, last } = place;
  const isFirst = last === START && parts.length === (place.isMeasuredAgain ? 2 : 1);
  if (!EYE_LINES.has(head) || !(isFirst || last === FIGURE || last === 'near' || last === 'remake')) return [];
  // Near distances are said for each eye once more.
  const since = parts.slice(parts.lastIndexOf('near') + 1);
  return (['R', 'L'] as const satisfies readonly EyeOrBoth[]).flatMap((eye) => {
    const entry = VOCABULARY.find(({ role, word }) => role === 'eye' && word === eye) as VocabularyEntry;
    const isNamed = since.some((part) => meaningsOf(part).includes(entry));
    return isNamed ? [] : [wordOffer(entry, eyes[eye])];
  });
}

function clauses(place: Place, closed: true): VocabularyEntry[];
function clauses(place: Place, closed: false): Offer[];
function clauses(place: Place, closed: boolean): (VocabularyEntry | Offer)[] {
  const rows = CLAUSES.filter((row) => (row.closed ?? false) === closed && fits(row, place));
  return rows.flatMap(({ words, again = false }) =>
    words.flatMap((word) => {
      const entry = meaningInside(word);
      if (!entry || (!again && isSaid(place, entry))) return [];
      return [closed ? entry : wordOffer(entry, word)];
    }),
  );
}

function fits({ lines, after, needs, room }: Clause, { cursor, parts, head, last }: Place): boolean {
  if (room !== undefined && room !== cursor.lineRoom) return false;
  if (lines !== 'any' && !lines.includes(head)) return false;
  if (needs !== undefined && !needs.some((word) => parts.includes(word, 1) || head === word)) return false;
  return after === 'any' ? parts.length > 1 && !AWAITING.has(last) : after.includes(last);
}

/** Behind these a name or a word of their own is wanted. */
const AWAITING = new Set(['with', 'by', 'at', 'stage', 'from', 'due', 'near', 'to', 'above', 'read', 'base']);

/** What a word means inside a line, where it has a meaning of that kind. */
function meaningInside(word: string): VocabularyEntry | undefined {
  const all = meaningsOf(word);
  return all.find(({ role }) => role !== 'line' && role !== 'block' && role !== 'choice') ?? all[0];
}
