import type { Location, ReferenceParams } from 'vscode-languageserver';
import { keyOf } from '../addresses';
import { nameAt } from '../names/at';
import { locationOf } from '../names/locations';
import type { Snapshot } from '../snapshot';
import type { Options } from './options';

/** Every place, in every file, that speaks of the instrument, the tolerance or the order of a name. */
export function references(
  snapshot: Snapshot,
  { position, context }: ReferenceParams,
  { names }: Options,
): Location[] | null {
  const found = nameAt(snapshot, position);
  const lookup = names();
  const file = lookup.file(keyOf(snapshot.uri));
  if (!found || !file) return null;
  return lookup
    .occurrences(file, found.kind, found.name)
    .filter(({ isDefinition }) => context.includeDeclaration || !isDefinition)
    .map(locationOf);
}
