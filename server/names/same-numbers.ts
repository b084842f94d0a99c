/**
 * Orders of one number in several files of the workspace. Names are looked up in an index; only where two files have one
 * are the orders of that name read and resolved, and kept for as long as their file stays the same.
 */
import {
  type LentilDocument,
  type OrderElsewhere,
  type OrderPowers,
  orderNames,
  orderPowersIn,
  orderPowersOf,
} from '../../orders';
import type { Files } from '../platform';
import type { NamedFile } from './lookup';
import type { NameTable } from './table';

export type Elsewhere = ReadonlyMap<string, readonly OrderElsewhere[]>;

export const NOWHERE_ELSE: Elsewhere = new Map();

export interface OpenFile {
  readonly uri: string;
  readonly key: string;
  readonly document: LentilDocument;
}

/** The files as they are now. */
export interface AllFiles {
  readonly open: readonly OpenFile[];
  readonly closed: ReadonlyMap<string, NamedFile>;
  /** Another number whenever a closed file has come, changed or gone. */
  readonly version: number;
}

type Known = Map<string, readonly OrderPowers[]>;

export class SameNumbers {
  readonly #read: Files['read'];
  readonly #pathOf: (uri: string) => string;
  #index: { readonly version: number; readonly files: ReadonlyMap<string, readonly NamedFile[]> } | null = null;
  /** By the table or the document of a file, which is another one after every change. */
  readonly #known = new WeakMap<NameTable | LentilDocument, Known>();

  /** @param pathOf how a file is named to a person */
  constructor(read: Files['read'], pathOf: (uri: string) => string) {
    this.#read = read;
    this.#pathOf = pathOf;
  }

  /** The orders of other files by the names that a file has. */
  async of(key: string, names: Iterable<string>, { open, closed, version }: AllFiles): Promise<Elsewhere> {
    const index = this.#closedByName(closed, version);
    const openKeys = new Set(open.map((one) => one.key));
    const closedNames = new Map<NamedFile, Set<string>>();
    const openNames = new Map<OpenFile, Set<string>>();
    for (const name of names) {
      for (const file of index.get(name) ?? [])
        if (file.key !== key && !openKeys.has(file.key)) add(closedNames, file, name);
      for (const file of open) if (file.key !== key && orderNames(file.document).has(name)) add(openNames, file, name);
    }
    if (closedNames.size === 0 && openNames.size === 0) return NOWHERE_ELSE;
    const found = new Map<string, OrderElsewhere[]>();
    const tell = (uri: string, orders: readonly OrderPowers[]): void => {
      const path = this.#pathOf(uri);
      for (const { name, line, powers } of orders) {
        const others = found.get(name) ?? [];
        others.push({ path, line, powers });
        found.set(name, others);
      }
    };
    for (const [{ uri, document }, wanted] of openNames)
      tell(
        uri,
        this.#kept(document, wanted, () => orderPowersOf(document, (name) => wanted.has(name))),
      );
    for (const [{ uri, table }, wanted] of [...closedNames].sort(([a], [b]) => (a.key < b.key ? -1 : 1))) {
      const text = this.#isKnown(table, wanted) ? '' : await this.#read(uri);
      // A file that has gone meanwhile is told of when the editor tells it.
      if (typeof text !== 'string') continue;
      tell(
        uri,
        this.#kept(table, wanted, () => orderPowersIn(text, (name) => wanted.has(name))),
      );
    }
    return found;
  }

  #closedByName(closed: AllFiles['closed'], version: number): ReadonlyMap<string, readonly NamedFile[]> {
    if (this.#index?.version === version) return this.#index.files;
    const files = new Map<string, NamedFile[]>();
    for (const file of closed.values()) {
      for (const { kind, name, definitions } of file.table.values()) {
        if (kind !== 'order' || definitions.length === 0) continue;
        const known = files.get(name);
        if (known) known.push(file);
        else files.set(name, [file]);
      }
    }
    this.#index = { version, files };
    return files;
  }

  #isKnown(source: NameTable | LentilDocument, wanted: ReadonlySet<string>): boolean {
    const known = this.#known.get(source);
    return known !== undefined && [...wanted].every((name) => known.has(name));
  }

  #kept(
    source: NameTable | LentilDocument,
    wanted: ReadonlySet<string>,
    make: () => readonly OrderPowers[],
  ): readonly OrderPowers[] {
    const known: Known = this.#known.get(source) ?? new Map();
    if (!this.#isKnown(source, wanted)) {
      const made = make();
      for (const name of wanted)
        known.set(
          name,
          made.filter((one) => one.name === name),
        );
      this.#known.set(source, known);
    }
    return [...wanted].flatMap((name) => known.get(name) ?? []);
  }
}

function add<K>(map: Map<K, Set<string>>, key: K, name: string): void {
  const known = map.get(key);
  if (known) known.add(name);
  else map.set(key, new Set([name]));
}

/** Whether two say the same, so that nothing is worked out again. */
export const saysTheSame = (one: Elsewhere, other: Elsewhere): boolean =>
  one === other || JSON.stringify([...one]) === JSON.stringify([...other]);
