import { type BlockKind, commentStart, meaningsOf, type VocabularyEntry } from '../../../grammar';
import { wordInWords } from '../word-in-words';
import { covers, type Part, type Spot } from './part';

const WORD = /[A-Za-z]+(?:-[A-Za-z]+)*|×/g;
const QUOTED = /"[^"]*"?|[“„][^“”]*[“”]?|«[^»]*»?/g;

/** The word of the notation under the cursor: how it is written and what it says. */
export function aboutWord({ text, character, node, analysis }: Spot): Part[] {
  if (character > commentStart(text) || matchAt(QUOTED, text, character)) return [];
  const found = matchAt(WORD, text, character);
  if (!found) return [];
  const isHead = node.head !== null && found.start === node.head.start;
  const entry = meaning(found.word, isHead, analysis.block.kind as BlockKind, node.head?.word);
  if (!entry || isName(node, found)) return [];
  return [{ start: found.start, end: found.end, markdown: wordInWords(entry) }];
}

function matchAt(pattern: RegExp, text: string, character: number) {
  for (const { 0: word, index } of text.matchAll(pattern)) {
    const span = { start: index, end: index + word.length };
    if (covers(span, character)) return { ...span, word };
  }
  return null;
}

/** At the head of a line a word opens the line; further on it has the other meaning, and there that of its own line. */
function meaning(word: string, isHead: boolean, block: BlockKind, line = ''): VocabularyEntry | undefined {
  const all = meaningsOf(word);
  const opening = all.filter(({ role }) => role === 'line' || role === 'block' || role === 'eye');
  const inside = all.filter(({ role }) => role !== 'line' && role !== 'block');
  if (isHead) return opening.find(({ blocks }) => blocks.includes(block)) ?? opening[0] ?? all[0];
  return inside.find(({ of }) => of.includes(line)) ?? inside[0] ?? opening[0];
}

/** A name is no word of the notation, whatever it looks like. */
function isName(node: Spot['node'], { start }: { readonly start: number }): boolean {
  const names = [
    'name' in node ? node.name : null,
    'text' in node ? node.text : null,
    'by' in node ? node.by : null,
    'with' in node ? node.with : null,
    'why' in node ? node.why : null,
    node.qualifiers?.with ?? null,
  ];
  return names.some((name) => name != null && name.start <= start && start < name.end);
}
