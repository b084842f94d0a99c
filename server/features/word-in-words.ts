import type { VocabularyEntry } from '../../grammar';

/** A word of the notation in Markdown: what it says, and how its line is written. */
export function wordInWords({ word, help, syntax }: VocabularyEntry): string {
  const written = syntax === '' ? '' : `\n\n\`\`\`lentil\n${syntax.replaceAll(' | ', '\n')}\n\`\`\``;
  return `**${word}**: ${help}${written}`;
}
