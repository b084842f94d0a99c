import {
  LSPErrorCodes,
  type PrepareRenameParams,
  type PrepareRenameResult,
  type RenameParams,
  ResponseError,
  type TextDocumentPositionParams,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { keyOf } from '../addresses';
import { nameAt } from '../names/at';
import { rangeOf } from '../names/locations';
import { isPublished, type Lookup, type NamedFile, type Occurrence } from '../names/lookup';
import { type NameKind, writtenName } from '../names/names';
import type { Snapshot } from '../snapshot';
import type { Options } from './options';

/** What the editor shows instead of renaming. */
type Refusal = ResponseError<void>;

const refusal = (message: string): Refusal => new ResponseError(LSPErrorCodes.RequestFailed, message);

/** Whether the name at a place can be changed, and what stands there now. */
export function prepareRename(
  snapshot: Snapshot,
  { position }: PrepareRenameParams,
  { names }: Options,
): PrepareRenameResult | Refusal {
  const subject = subjectAt(snapshot, position, names());
  if (subject instanceof ResponseError) return subject;
  const { block, line, start, end } = subject.at;
  return { range: snapshot.range(block, { line, start, end }), placeholder: subject.name };
}

/** The files on disk that a renaming would change. */
export function filesToRename(
  snapshot: Snapshot,
  { position }: TextDocumentPositionParams,
  { names }: Options,
): readonly string[] {
  const subject = subjectAt(snapshot, position, names());
  if (subject instanceof ResponseError) return [];
  return [...new Set(subject.places.flatMap(({ file }) => (file.open ? [] : [file.uri])))];
}

/** Gives an order, an instrument or a tolerance another name wherever it is spoken of, in every file. */
export function rename(
  snapshot: Snapshot,
  { position, newName }: RenameParams,
  { names, abilities, isEveryFileRead }: Options,
): WorkspaceEdit | Refusal {
  const lookup = names();
  const subject = subjectAt(snapshot, position, lookup);
  if (subject instanceof ResponseError) return subject;
  if (!isEveryFileRead()) return refusal('The files of the workspace are still being read. Try again in a moment.');
  const { kind, name, places } = subject;
  const wanted = newName.trim();
  const written = writtenName(kind, wanted);
  if (written === null) return refusal(unwritable(wanted));
  if (wanted === name) return { changes: {} };
  const taken = takenBy(lookup, kind, wanted, places);
  if (taken) return refusal(taken);
  return editOf(places, written, abilities.versionedEdits);
}

interface Subject {
  readonly kind: NameKind;
  readonly name: string;
  readonly at: NonNullable<ReturnType<typeof nameAt>>;
  readonly places: readonly Occurrence[];
}

function subjectAt(
  snapshot: Snapshot,
  position: TextDocumentPositionParams['position'],
  lookup: Lookup,
): Subject | Refusal {
  const at = nameAt(snapshot, position);
  const file = lookup.file(keyOf(snapshot.uri));
  if (!at || !file) return refusal('Only the name of an order, an instrument or a tolerance can be changed here.');
  const { kind, name } = at;
  if (isPublished(kind, name) && lookup.homes(file, kind, name).length === 0)
    return refusal(
      `“${name}” is a published set, and keeps its name. To adjust it, write a tolerance block of your own.`,
    );
  return { kind, name, at, places: lookup.occurrences(file, kind, name) };
}

const unwritable = (name: string): string =>
  name === '' ? 'A name needs at least one letter or figure.' : 'This cannot be written as one name on one line.';

/** Why a name cannot be given because it means something else already where it would stand; null where it does not. */
function takenBy(lookup: Lookup, kind: NameKind, name: string, places: readonly Occurrence[]): string | null {
  if (isPublished(kind, name)) return `“${name}” is the name of a published set.`;
  for (const file of new Set(places.map((place) => place.file))) {
    const [home] = lookup.homes(file, kind, name);
    if (home) return `There is ${ARTICLES[kind]} “${name}” in ${fileName(home)} already.`;
  }
  return null;
}

const ARTICLES: Readonly<Record<NameKind, string>> = {
  order: 'an order',
  instrument: 'an instrument',
  tolerance: 'a tolerance',
};

const fileName = ({ key }: NamedFile): string => key.slice(key.lastIndexOf('/') + 1);

/** Edits by file; those of an open file carry the version they are meant for, those of a file on disk none. */
function editOf(places: readonly Occurrence[], newText: string, isVersioned: boolean): WorkspaceEdit {
  const byFile = new Map<NamedFile, TextEdit[]>();
  for (const place of places) {
    const edits = byFile.get(place.file) ?? [];
    edits.push({ range: rangeOf(place, place.file), newText });
    byFile.set(place.file, edits);
  }
  const files = [...byFile];
  if (!isVersioned) return { changes: Object.fromEntries(files.map(([{ uri }, edits]) => [uri, edits])) };
  return {
    documentChanges: files.map(([{ uri, open }, edits]) => ({
      textDocument: { uri, version: open?.version ?? null },
      edits,
    })),
  };
}
