/**
 * Which line opens a block. Decided from the line's own text alone, so that an edit elsewhere can never move a block
 * border; the scan is far cheaper than a parse and runs over every line once.
 */
import { nearestWord } from './nearest';
import { commentStart, indentOf } from './text';
import { VOCABULARY } from './vocabulary';

/** `preamble` is what stands above the first block; `unnamed` is a block whose opening word could not be read. */
export type StoreBlockKind = 'preamble' | 'order' | 'instrument' | 'defaults' | 'tolerance' | 'unnamed';

const OPENING = new Set<string>(['order', 'instrument', 'defaults', 'tolerance']);
const LINE_WORDS = new Set(
  VOCABULARY.filter(({ role }) => role === 'line' || role === 'eye' || role === 'block').flatMap(({ word, also }) =>
    [word, ...also].map((spelling) => spelling.toLowerCase()),
  ),
);
const FIRST_WORD = /^[A-Za-z]+(?:-[A-Za-z]+)*/;

/** The kind of block this line opens, or null when it belongs to the block above. */
export function opensBlock(line: string): StoreBlockKind | null {
  const indent = indentOf(line);
  const head = line.charCodeAt(indent) | 32;
  // Most lines are settled by their first letter: only words near order, instrument, defaults or tolerance go on.
  if (head < 97 || head > 122) return null;
  const word = FIRST_WORD.exec(line.slice(indent, indent + 24))?.[0].toLowerCase();
  if (!word) return null;
  if (OPENING.has(word)) return word as StoreBlockKind;
  if (indent > 0 || LINE_WORDS.has(word)) return null;
  return looksLikeOpening(word, line.slice(word.length, commentStart(line)).trim()) ? 'unnamed' : null;
}

const ONE_NAME = /^(?:[^\s]+|"(?:[^"]|"")*"?|[“„][^“”]*[“”]?|«[^»]*»?)$/;

/**
 * `ordr QL-1043`: an unknown word at the margin with one name behind it, nearer to a block word than to any other; or
 * `defualts`, which has no name.
 */
function looksLikeOpening(word: string, rest: string): boolean {
  if (rest === '' || rest === ':') return nearestWord(word, [...LINE_WORDS, ...OPENING]) === 'defaults';
  if (!ONE_NAME.test(rest)) return false;
  const near = nearestWord(word, [...LINE_WORDS]);
  if (near !== null) return OPENING.has(near);
  return /[A-Za-z"“„]/.test(rest);
}
