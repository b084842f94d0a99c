/**
 * Every word of the notation once: spelling, other spellings, what it is, where it may stand, and a line of help.
 * The lexer, completion, hover and the colours all read this table; nothing else lists words.
 */
import type { VocabularyEntry } from './entry';
import { LINES } from './lines';
import { WORDS } from './words';

export type { BlockKind, VocabularyEntry, WordRole } from './entry';

export const VOCABULARY: readonly VocabularyEntry[] = [...LINES, ...WORDS];

const BY_SPELLING: ReadonlyMap<string, readonly VocabularyEntry[]> = (() => {
  const map = new Map<string, VocabularyEntry[]>();
  for (const item of VOCABULARY) {
    for (const spelling of [item.word, ...item.also]) {
      const key = spelling.toLowerCase();
      const list = map.get(key);
      if (list) list.push(item);
      else map.set(key, [item]);
    }
  }
  return map;
})();

/** All meanings of a word, without regard to case; empty when it is not a word of the notation. */
export const meaningsOf = (word: string): readonly VocabularyEntry[] => BY_SPELLING.get(word.toLowerCase()) ?? [];

const AT_THE_HEAD: ReadonlyMap<string, VocabularyEntry> = new Map(
  [...BY_SPELLING].flatMap(([spelling, entries]) => {
    const head = entries.find(({ role }) => role === 'line' || role === 'block' || role === 'eye');
    return head ? [[spelling, head] as const] : [];
  }),
);

/** The meaning of a word at the head of a line, or undefined. */
export const lineWord = (word: string): VocabularyEntry | undefined => AT_THE_HEAD.get(word.toLowerCase());

/** The choices or keys of a line or a clause. */
export const wordsOf = (role: 'choice' | 'key', of: string): readonly string[] =>
  VOCABULARY.filter((one) => one.role === role && one.of.includes(of)).map(({ word }) => word);

type Chosen = Map<string, Map<string, string>>;

/** For each line or clause the spellings of its choices or keys, in lower case, and the word each of them stands for. */
const CHOSEN: Readonly<Record<'choice' | 'key', Chosen>> = (() => {
  const chosen = { choice: new Map() as Chosen, key: new Map() as Chosen };
  for (const { role, word, also, of } of VOCABULARY) {
    if (role !== 'choice' && role !== 'key') continue;
    for (const line of of) {
      const words = chosen[role].get(line) ?? new Map<string, string>();
      for (const spelling of [word, ...also]) words.set(spelling.toLowerCase(), word.toLowerCase());
      chosen[role].set(line, words);
    }
  }
  return chosen;
})();

/** What a typed word is among the choices or the keys of a line or a clause, in lower case, or null when it is none. */
export const wordOf = (role: 'choice' | 'key', of: string, typed: string): string | null =>
  CHOSEN[role].get(of)?.get(typed.toLowerCase()) ?? null;
