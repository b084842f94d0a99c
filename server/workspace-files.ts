/**
 * All files of the workspace, each as it would be judged if it were open: with its bench file and the settings of its
 * folder. The text in the editor wins over the one on disk.
 */
import { parseDocument } from '../orders';
import { isBenchFile } from './addresses';
import type { NamedFile } from './names/lookup';
import type { Elsewhere } from './names/same-numbers';
import { type Around, surroundingsOf } from './nearby';
import type { Files } from './platform';
import type { Session } from './session';
import { Snapshot, type Surroundings } from './snapshot';

/** What the judgement of a closed file rests on. Tables are made anew whenever a file is read again. */
export interface Basis {
  readonly table: unknown;
  readonly bench: unknown;
  readonly settings: string;
}

export interface WorkspaceFile {
  readonly uri: string;
  readonly key: string;
  /** Null for a file that is open in the editor. */
  readonly basis: Basis | null;
  /** Null when it cannot be read, or has gone meanwhile. */
  readonly snapshot: () => Promise<Snapshot | null>;
}

export class WorkspaceFiles {
  readonly #session: Session;
  readonly #files: Pick<Files, 'read'>;

  constructor(session: Session, files: Pick<Files, 'read'>) {
    this.#session = session;
    this.#files = files;
  }

  /** Those that are known by now, in the order of their addresses. */
  async list(): Promise<readonly WorkspaceFile[]> {
    const lookup = this.#session.lookup();
    const named = [...lookup.files].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0));
    // Asked for all at once, since one folder that does not answer should not be waited for by the next.
    const folders = new Map<string, Promise<Around>>();
    const around = named.map(({ uri, open }) => (open ? null : this.#around(uri, folders)));
    const known = await Promise.all(around);
    const listed: WorkspaceFile[] = [];
    for (const [at, file] of named.entries()) {
      const own = known[at];
      listed.push(own ? this.#closed(file, own, await this.#elsewhere(file)) : this.#open(file));
    }
    return listed;
  }

  #elsewhere({ uri, table }: NamedFile): Promise<Elsewhere> {
    const orders = [...table.values()].filter(({ kind, definitions }) => kind === 'order' && definitions.length > 0);
    return this.#session.elsewhere(
      uri,
      orders.map(({ name }) => name),
    );
  }

  /** Files of one folder are judged alike, but a bench file itself rests on no other. */
  #around(uri: string, folders: Map<string, Promise<Around>>): Promise<Around> {
    const place = isBenchFile(uri) ? uri : uri.slice(0, uri.lastIndexOf('/'));
    const known = folders.get(place);
    if (known) return known;
    const asked = this.#session.around(uri);
    folders.set(place, asked);
    return asked;
  }

  #open({ uri, key }: NamedFile): WorkspaceFile {
    const snapshot = async (): Promise<Snapshot | null> => {
      await this.#session.ready(uri);
      return this.#session.snapshot(uri) ?? null;
    };
    return { uri, key, basis: null, snapshot };
  }

  #closed({ uri, key, table }: NamedFile, around: Around, elsewhere: Elsewhere): WorkspaceFile {
    const surroundings = surroundingsOf(around, elsewhere);
    const { shared, ...chosen } = surroundings;
    const settings = JSON.stringify({ ...chosen, elsewhere: [...elsewhere] });
    const basis: Basis = { table, bench: shared[0] ?? null, settings };
    return { uri, key, basis, snapshot: () => this.#read(uri, surroundings) };
  }

  async #read(uri: string, surroundings: Surroundings): Promise<Snapshot | null> {
    const text = await this.#files.read(uri);
    return typeof text === 'string' ? Snapshot.of(uri, 0, parseDocument(text), surroundings) : null;
  }
}
