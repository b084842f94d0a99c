/** Words that may begin a line, the likeliest first. */
import { type Block, type EyeOrBoth, lineWord, sectionsOf, VOCABULARY, type VocabularyEntry } from '../../../grammar';
import type { Cursor, Room } from './cursor';
import type { EyeNames } from './eye-names';
import { type Offer, wordOffer } from './offer';

/** In the order in which slips and bench sheets mostly have them. */
const USUAL: Readonly<Record<Room, readonly string[]>> = {
  file: ['order', 'standard', 'instrument', 'defaults', 'tolerance'],
  order: ['R', 'L', 'add', 'prism', 'pd', 'height', 'design', 'lens', 'base-curve', 'frame', 'supply', 'reading'],
  defaults: ['lens', 'design', 'supply', 'as-worn', 'pd', 'frame'],
  reading: ['R', 'L', 'add', 'pd', 'prism', 'height', 'base-curve', 'thickness', 'cosmetic', 'again'],
  instrument: ['kind', 'reads-to', 'zero', 'calibrated', 'test-lens', 'uncertainty'],
  tolerance: ['power', 'cylinder', 'axis', 'add', 'prism', 'pd', 'height'],
};

const IN_ROOM: Readonly<Record<Room, readonly VocabularyEntry[]>> = {
  file: inLikelyOrder('file'),
  order: inLikelyOrder('order'),
  defaults: inLikelyOrder('defaults'),
  reading: inLikelyOrder('reading'),
  instrument: inLikelyOrder('instrument'),
  tolerance: inLikelyOrder('tolerance'),
};

/** Lines that the order or the reading has not said yet come first, and words that open another block last. */
export function lineWords(block: Block, cursor: Cursor, eyes: EyeNames): Offer[] {
  const { room, leavesReading } = cursor;
  const rooms: readonly Room[] =
    room !== 'reading' ? [room] : leavesReading ? ['order', 'reading'] : ['reading', 'order'];
  const here = rooms.flatMap((one) => {
    const said = wordsSaid(block, cursor.line, one);
    const isSaid = ({ word }: VocabularyEntry): boolean => said.has(word);
    return [...IN_ROOM[one].filter((entry) => !isSaid(entry)), ...IN_ROOM[one].filter(isSaid)];
  });
  return [...new Set([...here, ...IN_ROOM.file])].map((entry) =>
    wordOffer(entry, entry.role === 'eye' ? eyes[entry.word as EyeOrBoth] : entry.word),
  );
}

function inLikelyOrder(room: Room): readonly VocabularyEntry[] {
  const usual = USUAL[room];
  const place = (word: string): number => (usual.includes(word) ? usual.indexOf(word) : usual.length);
  const legal = VOCABULARY.filter(({ role, word, blocks }) =>
    room === 'file' ? usual.includes(word) && role !== 'clause' : blocks.includes(room),
  );
  return [...legal].sort((one, other) => place(one.word) - place(other.word));
}

/** Heads of the other lines of the same order, the same reading, or whatever block it is. */
function wordsSaid(block: Block, line: number, room: Room): ReadonlySet<string> {
  const sections = block.kind === 'order' ? sectionsOf(block).map(({ kind }) => kind) : [];
  const isMine = (at: number): boolean => {
    if (at === line || room === 'file') return false;
    if (room === 'reading') return sections[at] === 'reading' && readingOf(sections, at) === readingOf(sections, line);
    return room !== 'order' || sections[at] === 'body';
  };
  return new Set(
    block.lines.flatMap(({ text }, at) => {
      const head = isMine(at) ? /^\s*([\p{L}-]+)/u.exec(text)?.[1] : undefined;
      return (head && lineWord(head)?.word) ?? [];
    }),
  );
}

const readingOf = (sections: readonly string[], line: number): number => sections.lastIndexOf('reading-header', line);
