import type { DocumentLink, DocumentLinkParams } from 'vscode-languageserver';
import type { Block } from '../../grammar';
import { keyOf } from '../addresses';
import { rangeOf } from '../names/locations';
import { placesIn } from '../names/lookup';
import { namesOf } from '../names/names';
import type { Snapshot } from '../snapshot';
import { isVeryLarge } from './large';
import type { Options } from './options';

/**
 * Names that are described in another file lead there: instruments and tolerances to the bench file, a remade order to the
 * file of the first one. An editor asks for the whole document after every edit, so they are left off for very large files.
 */
export function documentLinks(snapshot: Snapshot, _: DocumentLinkParams, { names }: Options): DocumentLink[] | null {
  const lookup = names();
  const file = lookup.file(keyOf(snapshot.uri));
  if (!file || isVeryLarge(snapshot)) return null;
  return snapshot.document.blocks.flatMap((block, index) =>
    namesOf(block as Block).flatMap(({ kind, name, isDefinition, ...place }) => {
      const home = isDefinition ? undefined : lookup.homes(file, kind, name)[0];
      const [described] = (home && placesIn(home, kind, name)?.definitions) ?? [];
      if (!home || home === file || !described) return [];
      const { start } = rangeOf(described, home);
      return [{ range: snapshot.range(index, place), target: `${home.uri}#L${start.line + 1},${start.character + 1}` }];
    }),
  );
}
