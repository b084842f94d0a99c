/** What the vocabulary says about a word. */

export type BlockKind = 'order' | 'reading' | 'instrument' | 'defaults' | 'tolerance';

export type WordRole =
  | 'block'
  | 'line'
  | 'eye'
  | 'base'
  | 'cross'
  | 'plano'
  | 'no-cylinder'
  | 'label'
  | 'unit'
  | 'clause'
  | 'value'
  | 'choice'
  | 'key'
  | 'answer';

export interface VocabularyEntry {
  /** Canonical spelling. */
  readonly word: string;
  /** Other spellings the trade types; understood and left as typed. */
  readonly also: readonly string[];
  readonly role: WordRole;
  /** Blocks in which a line word may open a line. */
  readonly blocks: readonly BlockKind[];
  /** How the line or clause is written. */
  readonly syntax: string;
  readonly help: string;
  /** Lines and clauses that a choice or a key belongs to. */
  readonly of: readonly string[];
}

export const entry = (
  role: WordRole,
  word: string,
  also: readonly string[],
  syntax: string,
  help: string,
  blocks: readonly BlockKind[] = [],
): VocabularyEntry => ({ role, word, also, syntax, help, blocks, of: [] });

/** One of the few words that a line or a clause accepts in one place. */
export const choice = (
  word: string,
  of: readonly string[],
  syntax: string,
  help: string,
  also: readonly string[] = [],
): VocabularyEntry => ({ role: 'choice', word, also, syntax, help, blocks: [], of });

/** A word in front of a figure that says which of several figures of the line it is. */
export const key = (
  word: string,
  of: readonly string[],
  syntax: string,
  help: string,
  also: readonly string[] = [],
): VocabularyEntry => ({ role: 'key', word, also, syntax, help, blocks: [], of });
