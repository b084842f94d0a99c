/** The face of the notation: text to typed lines and back, with no optics and no protocol. */

export { opensBlock, type StoreBlockKind } from './blocks';
export { blockAt, type Cuts, cutsOf, partOf, textAt } from './cuts';
export { isDay } from './days';
export { type Block, LentilDocument, Line, parseDocument } from './document';
export { formatChanges, formatText, type LineChange } from './format';
export { nearestWord } from './nearest';
export { parseLine } from './parser';
export { REPEATABLE_LINES } from './parser/readers';
export { type LineSection, misplacedLines, type SectionKind, sectionsOf } from './sections';
export {
  commentStart,
  indentOf,
  type LineEnd,
  type Position,
  type Range,
  splitLines,
  stripByteOrderMark,
} from './text';
export type * from './tree';
export { type BlockKind, lineWord, meaningsOf, VOCABULARY, type VocabularyEntry, type WordRole } from './vocabulary';
