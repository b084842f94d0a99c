/**
 * All files of the workspace, each as it would be judged if it were open: with its bench file and the settings of its
 * folder. The text in the editor wins over the one on disk.
 */
import { type LentilDocument, parseDocument } from '../orders';
import { benchAddresses, keyOf } from './addresses';
import type { Lookup, NamedFile } from './names/lookup';
import type { Files } from './platform';
import type { Session } from './session';
import { type Settings, settingsFrom } from './settings';
import { Snapshot } from './snapshot';

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
  readonly #configuration: (folder: string | undefined) => Promise<unknown>;

  constructor(
    session: Session,
    files: Pick<Files, 'read'>,
    configuration: (folder: string | undefined) => Promise<unknown>,
  ) {
    this.#session = session;
    this.#files = files;
    this.#configuration = configuration;
  }

  /** Those that are known by now, in the order of their addresses. */
  async list(): Promise<readonly WorkspaceFile[]> {
    const lookup = this.#session.lookup();
    const named = [...lookup.files].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0));
    const folders = new Map<string | undefined, Settings>();
    const listed: WorkspaceFile[] = [];
    for (const file of named) listed.push(file.open ? this.#open(file) : await this.#closed(file, lookup, folders));
    return listed;
  }

  #open({ uri, key }: NamedFile): WorkspaceFile {
    const snapshot = async (): Promise<Snapshot | null> => {
      await this.#session.ready(uri);
      return this.#session.snapshot(uri) ?? null;
    };
    return { uri, key, basis: null, snapshot };
  }

  async #closed(file: NamedFile, lookup: Lookup, folders: Map<string | undefined, Settings>): Promise<WorkspaceFile> {
    const { uri, key, table } = file;
    const settings = await this.#settingsOf(uri, folders);
    const bench = this.#benchOf(file, lookup);
    const basis: Basis = {
      table,
      bench: bench?.open?.document ?? bench?.table ?? null,
      settings: [settings.standard, settings.guard, settings.nearPercent].join('\n'),
    };
    return { uri, key, basis, snapshot: () => this.#read(uri, bench, settings) };
  }

  #benchOf({ uri }: NamedFile, lookup: Lookup): NamedFile | undefined {
    const folder = this.#session.folderOf(uri);
    const addresses = benchAddresses(uri, folder === undefined ? null : keyOf(folder));
    return addresses.map((address) => lookup.file(keyOf(address))).find((found) => found !== undefined);
  }

  async #read(uri: string, bench: NamedFile | undefined, settings: Settings): Promise<Snapshot | null> {
    const text = await this.#files.read(uri);
    if (text === null) return null;
    const shared = bench ? await this.#documentOf(bench) : null;
    const { standard, guard, nearPercent } = settings;
    const surroundings = { standard, guard, nearPercent, shared: shared ? [shared] : [] };
    return Snapshot.of(uri, 0, parseDocument(text), surroundings);
  }

  async #documentOf(bench: NamedFile): Promise<LentilDocument | null> {
    if (bench.open) return bench.open.document;
    const text = await this.#files.read(bench.uri);
    return text === null ? null : parseDocument(text);
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
