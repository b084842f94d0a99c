/** How an order names the eyes, so that what is offered for it names them alike. */
import type { Block, EyeOrBoth, LineNode, VocabularyEntry } from '../../../grammar';
import { VOCABULARY } from '../../../grammar';

export type EyeNames = Readonly<Record<EyeOrBoth, string>>;

/** The vocabulary lists the spellings of the three eye words in the same order of styles. */
const STYLES: readonly EyeNames[] = (() => {
  const spellings = (word: EyeOrBoth): readonly string[] => {
    const { also } = VOCABULARY.find((entry) => entry.role === 'eye' && entry.word === word) as VocabularyEntry;
    return [word, ...also];
  };
  const both = spellings('both');
  return spellings('R').map((R, style) => ({
    R,
    L: spellings('L')[style] ?? 'L',
    // Right and left, spelled out, go with `both`.
    both: R === 'right' ? 'both' : (both[style] ?? 'both'),
  }));
})();

const USUAL = STYLES[0] as EyeNames;

/** The style of the first eye word of a block; R and L where there is none. */
export function eyeNamesOf(block: Block): EyeNames {
  for (const line of block.lines) {
    const [eye] = eyesIn(line.parsed(block.kind).node);
    if (!eye || eye.eye === 'both') continue;
    const typed = line.text.slice(eye.start, eye.end).toLowerCase();
    return STYLES.find(({ R, L }) => [R.toLowerCase(), L.toLowerCase()].includes(typed)) ?? USUAL;
  }
  return USUAL;
}

const eyesIn = (node: LineNode) =>
  node.kind === 'eyes' || node.kind === 'decided'
    ? node.eyes
    : 'entries' in node
      ? node.entries.flatMap(({ eye }) => eye ?? [])
      : [];
