/**
 * The orders of all files of the workspace with their verdicts, worked out when somebody asks, in slices that let other
 * messages through. Of a closed file only its rows are kept, for as long as the file, its bench file and its settings
 * stay the same.
 */
import { type LentilDocument, parseDocument } from '../orders';
import { benchAddresses, keyOf } from './addresses';
import { type OrderRow, orderRows } from './features/order-list';
import type { Lookup, NamedFile } from './names/lookup';
import type { Files } from './platform';
import type { Session } from './session';
import { type Settings, settingsFrom } from './settings';
import { Snapshot } from './snapshot';
import { turn } from './turn';

/** Working out lets other work through after so long, milliseconds. */
const SLICE = 10;

/** What the rows of a closed file rest on. Tables are made anew whenever a file is read again. */
interface Basis {
  readonly table: unknown;
  readonly bench: unknown;
  readonly settings: string;
}

interface Kept extends Basis {
  readonly rows: readonly OrderRow[];
}

export class WorkspaceOrders {
  readonly #session: Session;
  readonly #files: Pick<Files, 'read'>;
  readonly #configuration: (folder: string | undefined) => Promise<unknown>;
  readonly #kept = new Map<string, Kept>();
  #rows: readonly (readonly OrderRow[])[] = [];
  #running: Promise<void> = Promise.resolve();
  #sliceEnd = 0;

  constructor(
    session: Session,
    files: Pick<Files, 'read'>,
    configuration: (folder: string | undefined) => Promise<unknown>,
  ) {
    this.#session = session;
    this.#files = files;
    this.#configuration = configuration;
  }

  /** The rows of every file in the order of their addresses, as they were last brought up to date. */
  get rows(): readonly (readonly OrderRow[])[] {
    return this.#rows;
  }

  /** Those who ask at the same time wait for each other, and the later ones find the work done. */
  bringUpToDate(): Promise<void> {
    this.#running = this.#running.then(() => this.#work());
    return this.#running;
  }

  async #work(): Promise<void> {
    await this.#session.namesRead();
    const lookup = this.#session.lookup();
    const files = [...lookup.files].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0));
    const folders = new Map<string | undefined, Settings>();
    const all: (readonly OrderRow[])[] = [];
    for (const file of files)
      all.push(await (file.open ? this.#ofOpen(file.uri) : this.#ofClosed(file, lookup, folders)));
    for (const key of this.#kept.keys()) if (!lookup.file(key)) this.#kept.delete(key);
    this.#rows = all;
  }

  async #ofOpen(uri: string): Promise<readonly OrderRow[]> {
    await this.#session.ready(uri);
    const snapshot = this.#session.snapshot(uri);
    return snapshot ? this.#rowsOf(snapshot) : [];
  }

  async #ofClosed(
    file: NamedFile,
    lookup: Lookup,
    folders: Map<string | undefined, Settings>,
  ): Promise<readonly OrderRow[]> {
    const settings = await this.#settingsOf(file.uri, folders);
    const bench = this.#benchOf(file, lookup);
    const basis: Basis = {
      table: file.table,
      bench: bench?.open?.document ?? bench?.table ?? null,
      settings: [settings.standard, settings.guard, settings.nearPercent].join('\n'),
    };
    const known = this.#kept.get(file.key);
    if (known && known.table === basis.table && known.bench === basis.bench && known.settings === basis.settings)
      return known.rows;
    const rows = await this.#read(file, bench, settings);
    this.#kept.set(file.key, { ...basis, rows });
    return rows;
  }

  #benchOf({ uri }: NamedFile, lookup: Lookup): NamedFile | undefined {
    const folder = this.#session.folderOf(uri);
    const addresses = benchAddresses(uri, folder === undefined ? null : keyOf(folder));
    return addresses.map((address) => lookup.file(keyOf(address))).find((found) => found !== undefined);
  }

  async #read(file: NamedFile, bench: NamedFile | undefined, settings: Settings): Promise<readonly OrderRow[]> {
    const text = await this.#files.read(file.uri);
    if (text === null) return [];
    const shared = bench ? await this.#documentOf(bench) : null;
    const { standard, guard, nearPercent } = settings;
    const surroundings = { standard, guard, nearPercent, shared: shared ? [shared] : [] };
    return this.#rowsOf(Snapshot.of(file.uri, 0, parseDocument(text), surroundings));
  }

  async #documentOf(bench: NamedFile): Promise<LentilDocument | null> {
    if (bench.open) return bench.open.document;
    const text = await this.#files.read(bench.uri);
    return text === null ? null : parseDocument(text);
  }

  async #rowsOf(snapshot: Snapshot): Promise<readonly OrderRow[]> {
    const rows: OrderRow[] = [];
    for (const index of snapshot.document.blocks.keys()) {
      rows.push(...orderRows(snapshot, index));
      if (performance.now() < this.#sliceEnd) continue;
      await turn();
      this.#sliceEnd = performance.now() + SLICE;
    }
    return rows;
  }

  async #settingsOf(uri: string, folders: Map<string | undefined, Settings>): Promise<Settings> {
    const folder = this.#session.folderOf(uri);
    const known = folders.get(folder);
    if (known) return known;
    const settings = settingsFrom(await this.#configuration(folder).catch(() => undefined));
    folders.set(folder, settings);
    return settings;
  }
}
