/**
 * Everything that changes: open documents, settings, workspace folders. It hands out snapshots, which do not. The text
 * in the editor wins over the one on disk for as long as it is open.
 */
import { FileChangeType, type TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { dayOfChecking, type LentilDocument, type MissingInput, orderNames, parseDocument } from '../orders';
import {
  benchAddresses,
  isBenchFile,
  isInside,
  isNearbyFile,
  isServed,
  isUntitled,
  keyOf,
  pathBelow,
} from './addresses';
import { AfterPause } from './after-pause';
import { ClosedFiles } from './names/closed-files';
import { Lookup } from './names/lookup';
import { type Elsewhere, NOWHERE_ELSE, SameNumbers, saysTheSame } from './names/same-numbers';
import { tableOf } from './names/table';
import { type Around, aroundOf, type Bench, type Gathering, Nearby, type SettingsFile, surroundingsOf } from './nearby';
import { withPatience } from './patience';
import type { Platform } from './platform';
import { DEFAULT_SETTINGS, kept, type Settings } from './settings';
import { Snapshot } from './snapshot';
import { applyChange } from './text-changes';

/** What a session asks for, and whom it tells. */
export interface Host extends Platform {
  /** The `lentil` section of the settings for a folder, or for the window. */
  readonly configuration: (folder: string | undefined) => Promise<unknown>;
  /** The text of a document has changed. */
  readonly edited: (uri: string) => void;
  /** The settings of a document or its bench file have become known or have changed. */
  readonly settled: (uri: string) => void;
  /** The settings files that open documents rest on and that cannot be used have changed. */
  readonly faults: (files: readonly SettingsFile[]) => void;
  readonly log: (message: string) => void;
}

interface Open {
  snapshot: Snapshot;
  settings: Settings;
  bench: Bench | null;
  file: SettingsFile | null;
  missing: readonly MissingInput[];
  /** Orders of other files by the names they share with its own. */
  elsewhere: Elsewhere;
  /** Settles when the settings and the bench file are known, or are too long in coming: then nothing is judged until they are. */
  ready: Promise<void>;
  isReady: boolean;
  /** Counts the questions asked for this document, so that a late answer to an older one is dropped. */
  asked: number;
}

const NOTHING: readonly MissingInput[] = [];

export class Session {
  readonly #host: Host;
  readonly #documents = new Map<string, Open>();
  readonly #closed: ClosedFiles;
  readonly #nearby: Nearby;
  readonly #numbers: SameNumbers;
  readonly #comparing: AfterPause;
  #folders: readonly string[] = [];

  constructor(host: Host) {
    this.#host = host;
    this.#closed = new ClosedFiles(host, host.log);
    this.#numbers = new SameNumbers(host.read, (uri) => this.pathOf(uri));
    this.#comparing = new AfterPause(
      () => this.#compare(),
      (error) => host.log(`order numbers: ${error}`),
    );
    this.#nearby = new Nearby({
      read: host.read,
      configuration: host.configuration,
      inEditor: (key) => this.#openByKey(key)?.snapshot.document,
      absent: (uri) => this.#closed.absent(uri),
    });
  }

  get uris(): readonly string[] {
    return [...this.#documents.keys()];
  }

  snapshot(uri: string): Snapshot | undefined {
    return this.#documents.get(uri)?.snapshot;
  }

  settings(uri: string): Settings {
    return this.#documents.get(uri)?.settings ?? DEFAULT_SETTINGS;
  }

  isReady(uri: string): boolean {
    return this.#documents.get(uri)?.isReady ?? false;
  }

  async ready(uri: string): Promise<void> {
    await this.#documents.get(uri)?.ready;
  }

  /** The names of all files; the text in the editor wins over the one on disk. */
  lookup(): Lookup {
    const files = new Map(this.#closed.files);
    for (const [uri, { snapshot }] of this.#documents) {
      const { document, version } = snapshot;
      files.set(keyOf(uri), { uri, key: keyOf(uri), table: tableOf(document), open: { version, document } });
    }
    return new Lookup(files, ({ uri }) => benchAddresses(uri, this.#topOf(uri)).map(keyOf));
  }

  get isEveryFileRead(): boolean {
    return !this.#closed.isReading;
  }

  /** Waits until the names of all files are known, or too long. */
  async namesRead(): Promise<void> {
    await withPatience(this.#closed.ready);
  }

  /** Reads the names of closed files again. */
  async readAgain(uris: readonly string[]): Promise<void> {
    await withPatience(this.#closed.again(uris));
  }

  /** Nothing is read any more. */
  stop(): void {
    this.#comparing.stop();
    this.#closed.stop();
  }

  open(uri: string, version: number, text: string): void {
    if (!isServed(uri, this.#folders)) return;
    const snapshot = Snapshot.of(uri, version, parseDocument(text), { shared: [] });
    this.#documents.set(uri, {
      snapshot,
      settings: DEFAULT_SETTINGS,
      bench: null,
      file: null,
      missing: NOTHING,
      elsewhere: NOWHERE_ELSE,
      ready: Promise.resolve(),
      isReady: false,
      asked: 0,
    });
    this.#ask(uri);
    if (isBenchFile(uri)) this.#askBelow(keyOf(uri));
    this.#comparing.ask();
  }

  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): void {
    const open = this.#documents.get(uri);
    if (!open) return;
    const document = changes.reduce(applyChange, open.snapshot.document);
    const last = changes.at(-1);
    const edited = last && 'range' in last ? Math.min(last.range.start.line, document.lineCount - 1) : 0;
    open.snapshot = open.snapshot.after(document, version, edited);
    // A document may stay open over midnight, and what was to come is then past.
    if (open.isReady && open.snapshot.context.today !== dayOfChecking())
      open.snapshot = open.snapshot.within({ ...surroundingsOf(open, open.elsewhere), levels: open.settings.levels });
    this.#host.edited(uri);
    this.#comparing.ask();
    if (isBenchFile(uri)) this.#handOn(keyOf(uri), document);
  }

  close(uri: string): void {
    if (!this.#documents.delete(uri)) return;
    this.#closed.changed(uri);
    this.#restsOnOthers();
    if (isBenchFile(uri)) this.#askBelow(keyOf(uri));
    this.#comparing.ask();
  }

  /** @param folders addresses of the workspace folders */
  setFolders(folders: readonly string[]): void {
    this.#folders = folders;
    this.#closed.setFolders(folders);
    this.settingsChanged();
    this.#comparing.ask();
  }

  addFolders(added: readonly string[], removed: readonly string[]): void {
    const gone = new Set(removed.map(keyOf));
    this.setFolders([...this.#folders.filter((folder) => !gone.has(keyOf(folder))), ...added]);
  }

  settingsChanged(): void {
    for (const uri of this.#documents.keys()) this.#ask(uri);
  }

  /** A file on disk was made, changed or deleted; a deletion may be that of a folder above bench and settings files. */
  fileChanged(uri: string, type: FileChangeType): void {
    const key = keyOf(uri);
    this.#nearby.changed(uri);
    if (type === FileChangeType.Deleted) this.#closed.deleted(uri);
    else this.#closed.changed(uri);
    this.#comparing.ask();
    if (isNearbyFile(uri)) this.#askBelow(key);
    else
      for (const [other, { bench, file }] of this.#documents)
        if ([bench, file].some((one) => one && isInside(one.key, key))) this.#ask(other);
  }

  /** A folder was renamed to this one. */
  folderCame(uri: string): void {
    this.#nearby.changed(uri);
    this.#closed.folderCame(uri);
    this.#comparing.ask();
    this.#askBelow(`${keyOf(uri)}/`);
  }

  /** The workspace folder that holds a document, the innermost of several. */
  folderOf(uri: string): string | undefined {
    const key = keyOf(uri);
    return this.#folders
      .filter((folder) => isInside(key, keyOf(folder)))
      .reduce<string | undefined>((best, one) => (best && best.length >= one.length ? best : one), undefined);
  }

  /** Key of the folder above which nothing is looked for: on a disk the root, as the command has it, else the workspace. */
  #topOf(uri: string): string | null {
    const folder = this.folderOf(uri);
    return folder && !this.#host.reads(uri) ? keyOf(folder) : null;
  }

  /** What a file that is not open is judged with, as far as it comes in time. */
  async around(uri: string): Promise<Around> {
    const gathering = this.#nearby.gather(uri, this.folderOf(uri), this.#topOf(uri), false);
    await withPatience(gathering.done);
    return aroundOf(gathering);
  }

  /** How a file is named to a person: by its path in the workspace folder. */
  pathOf(uri: string): string {
    return pathBelow(this.folderOf(uri), uri);
  }

  /** The orders of other files by names that a file has, as far as the files of the workspace have been read. */
  elsewhere(uri: string, names: Iterable<string>): Promise<Elsewhere> {
    // A text that was never saved is no file of the workspace.
    if (isUntitled(uri)) return Promise.resolve(NOWHERE_ELSE);
    const open = [...this.#documents]
      .filter(([one]) => !isUntitled(one))
      .map(([one, { snapshot }]) => ({ uri: one, key: keyOf(one), document: snapshot.document }));
    return this.#numbers.of(keyOf(uri), names, { open, closed: this.#closed.files, version: this.#closed.version });
  }

  /** Compares the order numbers of open files with those of all others, and tells what has changed. */
  async #compare(): Promise<void> {
    await this.#closed.ready;
    for (const [uri, open] of [...this.#documents]) {
      const elsewhere = await this.elsewhere(uri, orderNames(open.snapshot.document).keys());
      if (this.#comparing.isStopped) return;
      if (this.#documents.get(uri) !== open || saysTheSame(open.elsewhere, elsewhere)) continue;
      open.elsewhere = elsewhere;
      if (open.isReady) this.#settle(uri, open);
    }
  }

  /** Asks again for the settings and the bench file of the documents at or below the folder of such a file. */
  #askBelow(key: string): void {
    const folder = key.slice(0, key.lastIndexOf('/'));
    for (const uri of this.#documents.keys()) if (isInside(keyOf(uri), folder)) this.#ask(uri);
  }

  #ask(uri: string): void {
    const open = this.#documents.get(uri);
    if (!open) return;
    const asked = ++open.asked;
    const gathering = this.#nearby.gather(uri, this.folderOf(uri), this.#topOf(uri), true);
    const isWanted = (): boolean => open.asked === asked && this.#documents.get(uri) === open;
    let isLate = false;
    open.ready = withPatience(gathering.done).then(() => {
      isLate = ![gathering.bench, gathering.file, gathering.section].every((one) => one.answer());
      if (isWanted()) this.#take(uri, open, gathering);
      return open.asked === asked ? undefined : open.ready;
    });
    // What came too late to be waited for is judged by when it comes.
    Promise.all([open.ready, gathering.done]).then(() => {
      if (isWanted() && isLate) this.#take(uri, open, gathering);
    });
  }

  #take(uri: string, open: Open, gathering: Gathering): void {
    const { settings, file, bench, missing } = aroundOf(gathering);
    open.settings = kept(open.settings, settings);
    open.file = file;
    open.bench = bench && this.#newest(bench);
    open.missing = missing.length > 0 ? missing : NOTHING;
    // Only now is it sure that the file is still open and nothing newer was asked for it.
    if (bench?.document && bench.text !== null) this.#closed.keep(bench.uri, tableOf(bench.document));
    this.#restsOnOthers();
    this.#settle(uri, open);
  }

  /** Names of bench files outside the workspace hold only for as long as a file below them is open, and so do faults of settings files. */
  #restsOnOthers(): void {
    const open = [...this.#documents.values()];
    this.#closed.keepOutside(new Set(open.flatMap(({ bench }) => bench?.key ?? [])));
    const faulty = open.flatMap(({ file }) => (file?.fault ? [[file.key, file] as const] : []));
    this.#host.faults([...new Map(faulty).values()]);
  }

  /** A bench file in the editor may have been edited while the settings were on their way. */
  #newest(bench: Bench): Bench {
    const document = bench.text === null ? this.#openByKey(bench.key)?.snapshot.document : undefined;
    return document ? { ...bench, document } : bench;
  }

  #settle(uri: string, open: Open): void {
    open.snapshot = open.snapshot.within({ ...surroundingsOf(open, open.elsewhere), levels: open.settings.levels });
    open.isReady = true;
    this.#host.settled(uri);
  }

  #openByKey(key: string): Open | undefined {
    for (const [uri, open] of this.#documents) if (keyOf(uri) === key) return open;
    return undefined;
  }

  /** An edit of an open bench file reaches the documents that refer to it without asking again. */
  #handOn(key: string, document: LentilDocument): void {
    for (const [uri, open] of this.#documents) {
      if (open.bench?.key !== key) continue;
      open.bench = { ...open.bench, document, text: null };
      this.#settle(uri, open);
    }
  }
}
