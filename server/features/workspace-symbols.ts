import { SymbolKind, type WorkspaceSymbol, type WorkspaceSymbolParams } from 'vscode-languageserver';
import { locationOf } from '../names/locations';
import type { Lookup, NamedFile } from '../names/lookup';
import type { Named, NameKind } from '../names/names';

/** Nobody reads more; the editor asks again with every letter. */
const MOST = 200;

const KINDS: Readonly<Record<NameKind, SymbolKind>> = {
  order: SymbolKind.Class,
  instrument: SymbolKind.Object,
  tolerance: SymbolKind.Interface,
};

/** Orders, instruments and tolerances of all files by a part of their name, the best fitting first. */
export function workspaceSymbols(lookup: Lookup, { query }: WorkspaceSymbolParams): WorkspaceSymbol[] {
  const wanted = query.trim().toLowerCase();
  const found: { readonly fit: number; readonly named: Named; readonly file: NamedFile }[] = [];
  for (const file of lookup.files) {
    for (const { name, definitions } of file.table.values()) {
      const fit = definitions.length > 0 ? fitOf(name.toLowerCase(), wanted) : null;
      if (fit !== null) for (const named of definitions) found.push({ fit, named, file });
    }
  }
  return found
    .sort((a, b) => a.fit - b.fit || compare(a.named.name, b.named.name) || compare(a.file.key, b.file.key))
    .slice(0, MOST)
    .map(({ named, file }) => ({
      name: named.name,
      kind: KINDS[named.kind],
      location: locationOf({ ...named, file }),
      containerName: fileName(file),
    }));
}

/** How well a name fits: the whole of it, its beginning, a part, its letters in their order; null where it does not. */
function fitOf(name: string, wanted: string): number | null {
  const at = name.indexOf(wanted);
  if (at === 0) return name.length === wanted.length ? 0 : 1;
  if (at > 0) return 2;
  let from = 0;
  for (const letter of wanted) {
    from = name.indexOf(letter, from) + 1;
    if (from === 0) return null;
  }
  return 3;
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const fileName = ({ key }: NamedFile): string => key.slice(key.lastIndexOf('/') + 1);
