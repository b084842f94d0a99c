import { type DocumentHighlight, DocumentHighlightKind, type DocumentHighlightParams } from 'vscode-languageserver';
import { nameAt } from '../names/at';
import { keyOfName, tableOf } from '../names/table';
import type { Snapshot } from '../snapshot';
import { toEditor } from '../text-changes';

/** The places of this text that say the same name. */
export function documentHighlights(
  snapshot: Snapshot,
  { position }: DocumentHighlightParams,
): DocumentHighlight[] | null {
  const found = nameAt(snapshot, position);
  const places = found && tableOf(snapshot.document).get(keyOfName(found.kind, found.name));
  if (!places) return null;
  return [...places.definitions, ...places.uses].map(({ line, start, end, isDefinition }) => ({
    range: toEditor(snapshot.document, { start: { line, character: start }, end: { line, character: end } }),
    kind: isDefinition ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
