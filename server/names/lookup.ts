/**
 * Which file a name comes from. An instrument or a tolerance is looked up in its own file, then in the nearest bench file
 * above it, as the orders themselves do; the order that a remake repeats may stand in any file of the workspace.
 */
import type { LentilDocument } from '../../orders';
import { toleranceSetById } from '../../orders';
import type { Named, NameKind } from './names';
import { keyOfName, type NamePlaces, type NameTable } from './table';

/** A file with its names: open in the editor, or as it was last read from disk. */
export interface NamedFile {
  readonly uri: string;
  /** The form by which two spellings of an address are compared. */
  readonly key: string;
  readonly table: NameTable;
  /** The text in the editor; null for a file on disk. */
  readonly open: { readonly version: number; readonly document: LentilDocument } | null;
}

export interface Occurrence extends Named {
  readonly file: NamedFile;
}

/** Whether a name is that of a set that comes with the program. */
export const isPublished = (kind: NameKind, name: string): boolean =>
  kind === 'tolerance' && toleranceSetById.has(name.toLowerCase());

export class Lookup {
  readonly #files: ReadonlyMap<string, NamedFile>;
  readonly #benchesOf: (file: NamedFile) => readonly string[];

  /** @param benchesOf keys under which the bench file of a file may be found, nearest first */
  constructor(files: ReadonlyMap<string, NamedFile>, benchesOf: (file: NamedFile) => readonly string[]) {
    this.#files = files;
    this.#benchesOf = benchesOf;
  }

  get files(): Iterable<NamedFile> {
    return this.#files.values();
  }

  file(key: string): NamedFile | undefined {
    return this.#files.get(key);
  }

  /** The name that stands at a place. */
  at(key: string, line: number, character: number): Occurrence | null {
    const file = this.file(key);
    if (!file) return null;
    for (const { definitions, uses } of file.table.values()) {
      for (const one of [definitions, uses].flat())
        if (one.line === line && one.start <= character && character <= one.end) return { ...one, file };
    }
    return null;
  }

  /** The files whose definition a name has in a file; none where it is defined nowhere that counts. */
  homes(file: NamedFile, kind: NameKind, name: string): readonly NamedFile[] {
    const defines = (one: NamedFile): boolean => (placesIn(one, kind, name)?.definitions.length ?? 0) > 0;
    if (defines(file)) return [file];
    if (kind === 'order') return [...this.#files.values()].filter(defines).sort(byKey);
    const bench = this.#benchOf(file);
    return bench && defines(bench) ? [bench] : [];
  }

  /** Every place of the thing that a name means in a file: its definitions, and its uses in every file. */
  occurrences(file: NamedFile, kind: NameKind, name: string): readonly Occurrence[] {
    const homes = this.homes(file, kind, name);
    const isMeant = homes.length > 0 ? this.#meaning(homes, kind, name) : this.#undefined(file, kind, name);
    const files = [...this.#files.values()].filter((one) => placesIn(one, kind, name) && isMeant(one));
    return files.sort(byKey).flatMap((one) => {
      const places = placesIn(one, kind, name) as NamePlaces;
      return [...places.definitions, ...places.uses].sort(byPlace).map((place) => ({ ...place, file: one }));
    });
  }

  #meaning(homes: readonly NamedFile[], kind: NameKind, name: string): (file: NamedFile) => boolean {
    return (file) => this.homes(file, kind, name).some((home) => homes.includes(home));
  }

  /** Nothing tells that two files mean the same undeclared instrument; orders and published sets have one name everywhere. */
  #undefined(file: NamedFile, kind: NameKind, name: string): (file: NamedFile) => boolean {
    const isCommon = kind === 'order' || isPublished(kind, name);
    return (one) => (one === file || isCommon) && this.homes(one, kind, name).length === 0;
  }

  #benchOf(file: NamedFile): NamedFile | undefined {
    for (const key of this.#benchesOf(file)) {
      const found = this.#files.get(key);
      if (found) return found;
    }
    return undefined;
  }
}

export const placesIn = ({ table }: NamedFile, kind: NameKind, name: string): NamePlaces | undefined =>
  table.get(keyOfName(kind, name));

/** Files come in the order in which they happened to be read; answers do not. */
const byKey = (a: NamedFile, b: NamedFile): number => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);

const byPlace = (a: Named, b: Named): number => a.line - b.line || a.start - b.start;

export const NO_NAMES = new Lookup(new Map(), () => []);
