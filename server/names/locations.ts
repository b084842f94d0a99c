import type { Location, Range } from 'vscode-languageserver';
import { toEditor } from '../text-changes';
import type { NamedFile, Occurrence } from './lookup';
import type { Named } from './names';

/** The place of a name as the editor counts it. A byte order mark on disk is taken off by whoever opens the file. */
export function rangeOf({ line, start, end }: Named, { open }: NamedFile): Range {
  const range = { start: { line, character: start }, end: { line, character: end } };
  return open ? toEditor(open.document, range) : range;
}

export const locationOf = (found: Occurrence): Location => ({ uri: found.file.uri, range: rangeOf(found, found.file) });
