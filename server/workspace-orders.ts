/**
 * The orders of all files of the workspace with their verdicts, worked out when somebody asks, in slices that let other
 * messages through. Of a closed file only its rows are kept, for as long as the file, its bench file and its settings
 * stay the same.
 */
import { type OrderRow, orderRows } from './features/order-list';
import type { Session } from './session';
import { Slices } from './slices';
import type { Snapshot } from './snapshot';
import type { Basis, WorkspaceFile, WorkspaceFiles } from './workspace-files';

interface Kept {
  readonly basis: Basis;
  readonly rows: readonly OrderRow[];
}

export class WorkspaceOrders {
  readonly #session: Session;
  readonly #files: WorkspaceFiles;
  readonly #kept = new Map<string, Kept>();
  readonly #slices = new Slices();
  #rows: readonly (readonly OrderRow[])[] = [];
  #running: Promise<void> = Promise.resolve();

  constructor(session: Session, files: WorkspaceFiles) {
    this.#session = session;
    this.#files = files;
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
    const files = await this.#files.list();
    const all: (readonly OrderRow[])[] = [];
    for (const file of files) all.push(await this.#of(file));
    const present = new Set(files.map(({ key }) => key));
    for (const key of this.#kept.keys()) if (!present.has(key)) this.#kept.delete(key);
    this.#rows = all;
  }

  async #of({ key, basis, snapshot }: WorkspaceFile): Promise<readonly OrderRow[]> {
    const known = this.#kept.get(key);
    if (known && basis && isSame(known.basis, basis)) return known.rows;
    const read = await snapshot();
    const rows = read ? await this.#rowsOf(read) : [];
    if (basis) this.#kept.set(key, { basis, rows });
    return rows;
  }

  async #rowsOf(snapshot: Snapshot): Promise<readonly OrderRow[]> {
    const rows: OrderRow[] = [];
    for (const index of snapshot.document.blocks.keys()) {
      rows.push(...orderRows(snapshot, index));
      if (this.#slices.isOver) await this.#slices.next();
    }
    return rows;
  }
}

const isSame = (one: Basis, other: Basis): boolean =>
  one.table === other.table && one.bench === other.bench && one.settings === other.settings;
