/**
 * The names of files that are not open: of all workspace folders, read once in slices and then kept by what the editor
 * tells of changes on disk. Nothing waits for it but who asks to.
 */
import { parseDocument } from '../../orders';
import { isInside, isServed, keyOf } from '../addresses';
import { EXTENSION, type Files, isPassedOver } from '../platform';
import { turn } from '../turn';
import type { NamedFile } from './lookup';
import { namesOnce } from './names';
import { type NameTable, TableMaker } from './table';

/** So many files are kept; a larger workspace is told about once, and the rest of it is left out. */
const MOST_FILES = 20_000;
/** Reading lets other work through after so long, milliseconds. */
const SLICE = 10;

export class ClosedFiles {
  readonly #disk: Files;
  readonly #log: (message: string) => void;
  readonly #files = new Map<string, NamedFile>();
  /** Counts the readings of each file, so that the answer to an older one is dropped. */
  readonly #asked = new Map<string, number>();
  /** Keys of kept files that lie in no workspace folder. */
  readonly #outside = new Set<string>();
  #folders: readonly string[] = [];
  #running: Promise<unknown> = Promise.resolve();
  #pending = 0;
  #isStopped = false;
  #version = 0;

  constructor(disk: Files, log: (message: string) => void) {
    this.#disk = disk;
    this.#log = log;
  }

  /** Another number whenever a file has come, changed or gone. */
  get version(): number {
    return this.#version;
  }

  get files(): ReadonlyMap<string, NamedFile> {
    return this.#files;
  }

  /** Settles when all that was asked for up to now has been read. */
  get ready(): Promise<unknown> {
    return this.#running;
  }

  get isReading(): boolean {
    return this.#pending > 0;
  }

  /** @param folders addresses of the workspace folders; only new ones are looked through */
  setFolders(folders: readonly string[]): void {
    const before = new Set(this.#folders.map(keyOf));
    this.#folders = folders;
    for (const key of this.#files.keys()) if (!this.#isWanted(key)) this.#forget(key);
    for (const folder of folders) if (!before.has(keyOf(folder))) this.#then(() => this.#scan(folder));
  }

  /** A file was made or changed on disk, or has been closed in the editor. */
  changed(uri: string): void {
    if (this.#isWanted(keyOf(uri)) && isServed(uri, this.#folders)) this.#then(() => this.#read(uri));
  }

  /** A folder came to be inside the workspace. */
  folderCame(folder: string): void {
    this.#then(() => this.#scan(folder));
  }

  /** Reads files again, for an editor that does not tell what changes on disk. */
  async again(uris: readonly string[]): Promise<void> {
    await Promise.all(uris.map((uri) => this.#read(uri)));
  }

  /** A file or a whole folder has gone. */
  deleted(uri: string): void {
    const gone = keyOf(uri);
    for (const key of [...this.#files.keys()]) if (isInside(key, gone)) this.#forget(key);
    this.#forget(gone);
  }

  /** Keeps a bench file that was found beside or above an open file, which may lie outside the workspace. */
  keep(uri: string, table: NameTable): void {
    const key = keyOf(uri);
    if (!this.#isWanted(key)) this.#outside.add(key);
    this.#put(key, uri, table);
  }

  /**
   * Lets the bench files outside the workspace go that no open file rests on any more.
   * @param needed keys of the bench files of all open files
   */
  keepOutside(needed: ReadonlySet<string>): void {
    for (const key of this.#outside) {
      if (needed.has(key)) continue;
      this.#outside.delete(key);
      if (!this.#isWanted(key)) this.#forget(key);
    }
  }

  /** There is no bench file at this address. */
  absent(uri: string): void {
    if (this.#files.delete(keyOf(uri))) this.#version++;
  }

  /** Nothing is read any more. */
  stop(): void {
    this.#isStopped = true;
  }

  #forget(key: string): void {
    this.#version++;
    this.#files.delete(key);
    this.#asked.set(key, (this.#asked.get(key) ?? 0) + 1);
  }

  #then(work: () => Promise<void>): void {
    this.#pending++;
    const done = work()
      .catch((error) => this.#log(`names: ${error}`))
      .finally(() => this.#pending--);
    // The outcome of what went before is dropped, or each promise would keep all those before it.
    this.#running = Promise.all([this.#running, done]).then(() => undefined);
  }

  /** Whether a file lies in a workspace folder, and in none that holds no work of people. */
  #isWanted(key: string): boolean {
    if (!key.toLowerCase().endsWith(EXTENSION)) return false;
    return this.#folders.some((folder) => {
      const top = keyOf(folder);
      return isInside(key, top) && !key.slice(top.length).split('/').slice(0, -1).some(isPassedOver);
    });
  }

  async #scan(folder: string): Promise<void> {
    for await (const uri of this.#disk.list(folder)) {
      if (this.#isStopped || !this.#folders.some((one) => isInside(keyOf(folder), keyOf(one)))) return;
      if (this.#files.size >= MOST_FILES) {
        this.#log(`More than ${MOST_FILES} files in the workspace; names in the others are not found.`);
        return;
      }
      if (!this.#files.has(keyOf(uri))) await this.#read(uri);
    }
  }

  #put(key: string, uri: string, table: NameTable): void {
    this.#version++;
    this.#files.set(key, { uri, key, table, open: null });
  }

  async #read(uri: string): Promise<void> {
    const key = keyOf(uri);
    const asked = (this.#asked.get(key) ?? 0) + 1;
    this.#asked.set(key, asked);
    const isLate = (): boolean => this.#isStopped || this.#asked.get(key) !== asked || !this.#isWanted(key);
    const text = await this.#disk.read(uri);
    if (isLate()) return;
    if (typeof text !== 'string') {
      this.#version++;
      this.#files.delete(key);
      return;
    }
    const maker = new TableMaker(parseDocument(text), namesOnce);
    while (!maker.readFor(SLICE)) {
      await turn();
      if (isLate()) return;
    }
    this.#put(key, uri, maker.whole());
    await turn();
  }
}
