import type { DefinitionParams, Location } from 'vscode-languageserver';
import { keyOf } from '../addresses';
import { nameAt } from '../names/at';
import { locationOf } from '../names/locations';
import { placesIn } from '../names/lookup';
import type { Snapshot } from '../snapshot';
import type { Options } from './options';

/** Where the instrument, the tolerance or the order of a name is described; a published set is described nowhere here. */
export function definition(snapshot: Snapshot, { position }: DefinitionParams, { names }: Options): Location[] | null {
  const found = nameAt(snapshot, position);
  const lookup = names();
  const file = lookup.file(keyOf(snapshot.uri));
  if (!found || !file) return null;
  const { kind, name } = found;
  const locations = lookup
    .homes(file, kind, name)
    .flatMap((home) =>
      (placesIn(home, kind, name)?.definitions ?? []).map((one) => locationOf({ ...one, file: home })),
    );
  return locations.length > 0 ? locations : null;
}
