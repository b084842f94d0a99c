/**
 * Everything that changes: open documents, settings, workspace folders. It hands out snapshots, which do not. The text
 * in the editor wins over the one on disk for as long as it is open.
 */
import { FileChangeType, type TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { type LentilDocument, parseDocument } from '../orders';
import { BENCH_FILE, benchAddresses, isBenchFile, isInside, isServed, keyOf } from './addresses';
import { ClosedFiles } from './names/closed-files';
import { Lookup } from './names/lookup';
import { tableOf } from './names/table';
import type { Files } from './platform';
import { DEFAULT_SETTINGS, kept, type Settings, settingsFrom } from './settings';
import { Snapshot, type Surroundings } from './snapshot';
import { applyChange } from './text-changes';

/** What a session asks for, and whom it tells. */
export interface Host extends Files {
  /** The `lentil` section of the settings for a folder, or for the window. */
  readonly configuration: (folder: string | undefined) => Promise<unknown>;
  /** The text of a document has changed. */
  readonly edited: (uri: string) => void;
  /** The settings of a document or its bench file have become known or have changed. */
  readonly settled: (uri: string) => void;
  readonly log: (message: string) => void;
}

interface Bench {
  readonly key: string;
  readonly uri: string;
  readonly document: LentilDocument;
  /** Text on disk; null for one that is open in the editor. */
  readonly text: string | null;
}

interface Open {
  snapshot: Snapshot;
  settings: Settings;
  bench: Bench | null;
  /** Settles when the settings and the bench file are known, or nobody answers. */
  ready: Promise<void>;
  isReady: boolean;
  /** Counts the questions asked for this document, so that a late answer to an older one is dropped. */
  asked: number;
}

/** How long to wait for an editor that does not tell its settings, or a disk that does not answer. */
const PATIENCE = 1_000;

export class Session {
  readonly #host: Host;
  readonly #documents = new Map<string, Open>();
  readonly #closed: ClosedFiles;
  #folders: readonly string[] = [];

  constructor(host: Host) {
    this.#host = host;
    this.#closed = new ClosedFiles(host, host.log);
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
    this.#closed.stop();
  }

  open(uri: string, version: number, text: string): void {
    if (!isServed(uri, this.#folders)) return;
    const snapshot = Snapshot.of(uri, version, parseDocument(text), { shared: [] });
    const ready = Promise.resolve();
    this.#documents.set(uri, { snapshot, settings: DEFAULT_SETTINGS, bench: null, ready, isReady: false, asked: 0 });
    this.#ask(uri);
    if (isBenchFile(uri)) this.#askBelow(keyOf(uri));
  }

  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): void {
    const open = this.#documents.get(uri);
    if (!open) return;
    const document = changes.reduce(applyChange, open.snapshot.document);
    const last = changes.at(-1);
    const edited = last && 'range' in last ? Math.min(last.range.start.line, document.lineCount - 1) : 0;
    open.snapshot = open.snapshot.after(document, version, edited);
    this.#host.edited(uri);
    if (isBenchFile(uri)) this.#handOn(keyOf(uri), document);
  }

  close(uri: string): void {
    if (!this.#documents.delete(uri)) return;
    this.#closed.changed(uri);
    this.#dropBenches();
    if (isBenchFile(uri)) this.#askBelow(keyOf(uri));
  }

  /** @param folders addresses of the workspace folders */
  setFolders(folders: readonly string[]): void {
    this.#folders = folders;
    this.#closed.setFolders(folders);
    this.settingsChanged();
  }

  addFolders(added: readonly string[], removed: readonly string[]): void {
    const gone = new Set(removed.map(keyOf));
    this.setFolders([...this.#folders.filter((folder) => !gone.has(keyOf(folder))), ...added]);
  }

  settingsChanged(): void {
    for (const uri of this.#documents.keys()) this.#ask(uri);
  }

  /** A file on disk was made, changed or deleted; a deletion may be that of a folder above bench files. */
  fileChanged(uri: string, type: FileChangeType): void {
    const key = keyOf(uri);
    if (type === FileChangeType.Deleted) this.#closed.deleted(uri);
    else this.#closed.changed(uri);
    if (isBenchFile(uri)) this.#askBelow(key);
    else for (const [other, { bench }] of this.#documents) if (bench && isInside(bench.key, key)) this.#ask(other);
  }

  /** A folder was renamed to this one. */
  folderCame(uri: string): void {
    this.#closed.folderCame(uri);
    this.#askBelow(`${keyOf(uri)}/${BENCH_FILE}`);
  }

  /** The workspace folder that holds a document, the innermost of several. */
  folderOf(uri: string): string | undefined {
    const key = keyOf(uri);
    return this.#folders
      .filter((folder) => isInside(key, keyOf(folder)))
      .reduce<string | undefined>((best, one) => (best && best.length >= one.length ? best : one), undefined);
  }

  /** Key of the workspace folder that holds a document. */
  #topOf(uri: string): string | null {
    const folder = this.folderOf(uri);
    return folder ? keyOf(folder) : null;
  }

  /** Asks anew for the settings and the bench file of the documents at or below the folder of a bench file. */
  #askBelow(benchKey: string): void {
    const folder = benchKey.slice(0, -BENCH_FILE.length - 1);
    for (const uri of this.#documents.keys()) if (isInside(keyOf(uri), folder)) this.#ask(uri);
  }

  #ask(uri: string): void {
    const open = this.#documents.get(uri);
    if (!open) return;
    const asked = ++open.asked;
    const folder = this.folderOf(uri);
    const settings = withPatience(this.#host.configuration(folder));
    const bench = this.#findBench(uri, this.#topOf(uri), open);
    open.ready = Promise.all([settings, bench]).then(([section, found]) => {
      if (open.asked !== asked) return open.ready;
      if (this.#documents.get(uri) !== open) return undefined;
      open.settings = kept(open.settings, settingsFrom(section));
      open.bench = found && this.#newest(found);
      // Only now is it sure that the file is still open and nothing newer was asked for it.
      if (found?.text != null) this.#closed.keep(found.uri, tableOf(found.document));
      this.#dropBenches();
      this.#settle(uri, open);
      return undefined;
    });
  }

  /** Names of bench files outside the workspace hold only for as long as a file below them is open. */
  #dropBenches(): void {
    this.#closed.keepOutside(new Set([...this.#documents.values()].flatMap(({ bench }) => bench?.key ?? [])));
  }

  /** A bench file in the editor may have been edited while the settings were on their way. */
  #newest(bench: Bench): Bench {
    const document = bench.text === null ? this.#openByKey(bench.key)?.snapshot.document : undefined;
    return document ? { ...bench, document } : bench;
  }

  #settle(uri: string, open: Open): void {
    const { standard, guard, nearPercent, levels } = open.settings;
    const shared = open.bench ? [open.bench.document] : [];
    const surroundings: Surroundings = { standard, guard, nearPercent, levels, shared };
    open.snapshot = open.snapshot.within(surroundings);
    open.isReady = true;
    this.#host.settled(uri);
  }

  async #findBench(uri: string, top: string | null, open: Open): Promise<Bench | null> {
    for (const address of benchAddresses(uri, top)) {
      const key = keyOf(address);
      const inEditor = this.#openByKey(key);
      if (inEditor) return { key, uri: address, document: inEditor.snapshot.document, text: null };
      const text = await withPatience(this.#host.read(address));
      if (text === null) this.#closed.absent(address);
      if (typeof text !== 'string') continue;
      // The same text again keeps its document, so that nothing which rests on it is worked out anew.
      const isKnown = open.bench?.key === key && open.bench.text === text;
      return isKnown ? (open.bench as Bench) : { key, uri: address, document: parseDocument(text), text };
    }
    return null;
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

/** The answer, or undefined when there is none or it is too long in coming. */
function withPatience(answer: Promise<unknown>): Promise<unknown> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(undefined), PATIENCE);
    const settle = (value: unknown): void => {
      clearTimeout(timer);
      resolve(value);
    };
    answer.then(settle, () => settle(undefined));
  });
}
