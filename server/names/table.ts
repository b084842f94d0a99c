/** Every name of one text, with the places where it stands, for looking names up without reading the text again. */
import type { LentilDocument } from '../../orders';
import { type Named, type NameKind, namesOf } from './names';

/** A place by the line of the text. */
export interface NamePlaces {
  readonly kind: NameKind;
  readonly name: string;
  readonly definitions: readonly Named[];
  readonly uses: readonly Named[];
}

export type NameTable = ReadonlyMap<string, NamePlaces>;

export const keyOfName = (kind: NameKind, name: string): string => `${kind} ${name}`;

const TABLES = new WeakMap<LentilDocument, NameTable>();

/** The table of a document, made when it is first asked for. */
export function tableOf(document: LentilDocument): NameTable {
  let known = TABLES.get(document);
  if (!known) {
    known = new TableMaker(document, namesOf).whole();
    TABLES.set(document, known);
  }
  return known;
}

/** Makes a table block by block, so that a large text can be read in slices. */
export class TableMaker {
  readonly #document: LentilDocument;
  readonly #namesOf: typeof namesOf;
  readonly #table = new Map<string, { kind: NameKind; name: string; definitions: Named[]; uses: Named[] }>();
  #next = 0;

  constructor(document: LentilDocument, names: typeof namesOf) {
    this.#document = document;
    this.#namesOf = names;
  }

  /** Reads on for so many milliseconds; true when the whole text has been read. */
  readFor(milliseconds: number): boolean {
    const stop = performance.now() + milliseconds;
    const { blocks, starts } = this.#document;
    for (; this.#next < blocks.length; this.#next++) {
      if (this.#next % 32 === 0 && performance.now() > stop) return false;
      for (const one of this.#namesOf(blocks[this.#next] as (typeof blocks)[number]))
        this.#put(one, starts[this.#next] as number);
    }
    return true;
  }

  whole(): NameTable {
    this.readFor(Number.POSITIVE_INFINITY);
    return this.#table;
  }

  #put(named: Named, firstLine: number): void {
    const key = keyOfName(named.kind, named.name);
    let places = this.#table.get(key);
    if (!places) {
      places = { kind: named.kind, name: named.name, definitions: [], uses: [] };
      this.#table.set(key, places);
    }
    (named.isDefinition ? places.definitions : places.uses).push({ ...named, line: firstLine + named.line });
  }
}
