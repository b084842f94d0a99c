import { expect, test } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { VOCABULARY, type VocabularyEntry } from '../../grammar';
import { hover } from '../../server/features/hover';
import { options, sample } from './support/sample';

/** What is said about the marked word, without findings and figures; empty when nothing is. */
function wordAt(marked: string): string {
  const { snapshot, position } = sample(marked);
  const answer = hover(snapshot, { textDocument: { uri: '' }, position }, options());
  return ((answer?.contents as MarkupContent | undefined)?.value ?? '').split('\n\n---\n\n').at(-1) ?? '';
}

const HEADERS: Readonly<Record<string, string>> = {
  order: 'order A\n  ',
  reading: 'order A\n  reading 2026-11-24\n    ',
  instrument: 'instrument F\n  ',
  defaults: 'defaults\n  ',
  tolerance: 'tolerance t from z80.1-2015\n  ',
};

const lineWords = VOCABULARY.filter(({ role }) => role === 'line' || role === 'block' || role === 'eye');

test.each(
  lineWords.flatMap((entry) =>
    (entry.blocks.length > 0 ? entry.blocks : ['']).map((block) => [entry.word, block, entry] as const),
  ),
)('the word %s at the head of a line in %j says what it is and how it is written', (word, block, entry) => {
  const said = wordAt(`${HEADERS[block] ?? ''}|${word} 1`);
  expect(said).toContain(`**${word}**: ${entry.help}`);
  for (const written of entry.syntax.split(' | ')) expect(said).toContain(written);
});

test('every other spelling of a line word says the same', () => {
  for (const { word, also, blocks, help } of lineWords) {
    for (const spelling of also.filter((one) => /^[A-Za-z-]+$/.test(one))) {
      expect(wordAt(`${HEADERS[blocks[0] ?? ''] ?? ''}|${spelling} 1`)).toContain(`**${word}**: ${help}`);
    }
  }
});

const inLines = VOCABULARY.filter(({ role }) => role === 'choice' || role === 'key');

/** The line as its own entry writes it, with the word marked. */
function written({ word, syntax }: VocabularyEntry, line: string): string {
  const text = syntax.startsWith(line) ? syntax : `${line} ${syntax}`;
  return text.replace(new RegExp(`(^|\\s)${word}(?=\\s|$)`), `$1|${word}`);
}

test.each(inLines.flatMap((entry) => entry.of.map((line) => [entry.word, line, entry] as const)))(
  'the word %s in a line that begins with %s says what it is',
  (word, line, entry) => {
    const head = LINES[line] ?? line;
    const said = wordAt(
      `${HEADERS[BLOCKS[line] ?? 'order']}${written({ ...entry, syntax: entry.of[0] === line ? entry.syntax : word }, head)}`,
    );
    expect(said).toContain(`**${word}**: ${entry.help}`);
  },
);

/** Clauses that have words to choose from, in a line that holds them. */
const LINES: Readonly<Record<string, string>> = { at: 'prism R 0 at', stage: 'reading 2026-11-24 stage' };
const BLOCKS: Readonly<Record<string, string>> = {
  at: 'reading',
  impact: 'reading',
  cosmetic: 'reading',
  marking: 'reading',
  decided: 'reading',
};
