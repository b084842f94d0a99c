/** One thing to choose from, and how an editor gets it. */

import type { Range } from 'vscode-languageserver';
import { type CompletionItem, CompletionItemKind, InsertTextFormat, InsertTextMode } from 'vscode-languageserver';
import { VOCABULARY, type VocabularyEntry } from '../../../grammar';
import type { Abilities } from '../../abilities';
import { withoutStops } from '../stops';
import { type About, documentationOf } from './documentation';

export interface Offer {
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string;
  /** What is written, where it is not the label. */
  readonly text?: string;
  /** Lines with places to fill in, written instead of the label. */
  readonly snippet?: string;
  /** Other spellings by which it is found. */
  readonly also?: readonly string[];
  readonly about?: About;
}

const KINDS: Readonly<Partial<Record<VocabularyEntry['role'], CompletionItemKind>>> = {
  block: CompletionItemKind.Class,
  line: CompletionItemKind.Property,
  eye: CompletionItemKind.Variable,
  value: CompletionItemKind.EnumMember,
  choice: CompletionItemKind.EnumMember,
  base: CompletionItemKind.EnumMember,
};

/** A word of the notation, spelled as asked. */
export const wordOffer = (entry: VocabularyEntry, label = entry.word): Offer => ({
  label,
  kind: KINDS[entry.role] ?? CompletionItemKind.Keyword,
  detail: entry.help,
  also: label === entry.word ? entry.also : [],
  about: { what: 'word', at: VOCABULARY.indexOf(entry) },
});

/** A name as it is written: in quotes where it would come apart otherwise. */
export const asName = (name: string): string =>
  /^[^\s"#“”„«»]+$/.test(name) ? name : `"${name.replaceAll('"', '""')}"`;

/**
 * The offer as an item of a list.
 * @param place its place in the list, from the likeliest
 * @param range what it replaces
 * @param lineEnd of the document, for clients that take the text as it is
 */
export function itemOf(
  offer: Offer,
  place: number,
  range: Range,
  lineEnd: string,
  { snippets, linesAsTheyAre, lateDocumentation, markdownCompletion }: Abilities,
): CompletionItem {
  const { label, kind, detail, snippet, also = [], about } = offer;
  const plain = snippet === undefined ? (offer.text ?? label) : withoutStops(snippet).replaceAll('\n', lineEnd);
  const isSnippet = snippet !== undefined && snippets;
  return {
    label,
    kind,
    ...(detail ? { detail } : {}),
    sortText: String(place).padStart(4, '0'),
    ...(also.length > 0 || snippet !== undefined ? { filterText: [label, ...also].join(' ') } : {}),
    textEdit: { range, newText: isSnippet ? snippet : plain },
    ...(isSnippet ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    ...(snippet !== undefined && linesAsTheyAre ? { insertTextMode: InsertTextMode.asIs } : {}),
    ...(about && !lateDocumentation ? { documentation: documentationOf(about, markdownCompletion) } : {}),
    ...(about && lateDocumentation ? { data: about } : {}),
  };
}
