/**
 * Sends findings to the editor: at once for a small document, after a short pause for a large one, never for a version
 * that is no longer the newest, and not at all when nothing has changed. What was sent is remembered here.
 */
import type { Diagnostic, PublishDiagnosticsParams, Range } from 'vscode-languageserver';
import type { Session } from './session';
import type { Snapshot } from './snapshot';

export interface Outlet {
  readonly send: (params: PublishDiagnosticsParams) => void;
  readonly diagnosticsOf: (snapshot: Snapshot) => Diagnostic[];
  readonly log: (message: string) => void;
}

/** Up to so many blocks a document is published in the same turn as the edit. */
const SMALL = 100;
/** Edits of a large document that come closer together than this are published as one, milliseconds. */
const PAUSE = 3;
/** A document that takes longer than this to analyse lets other messages through in between, milliseconds. */
const SLICE = 25;

interface Sent {
  diagnostics: readonly Diagnostic[];
  /**
   * Lines edited since, null when other lines were moved: there an editor moves or drops its marks by itself, so that
   * the same list has to be sent again.
   */
  touched: Set<number> | null;
}

export class Publisher {
  readonly #session: Session;
  readonly #outlet: Outlet;
  readonly #sent = new Map<string, Sent>();
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();

  constructor(session: Session, outlet: Outlet) {
    this.#session = session;
    this.#outlet = outlet;
  }

  /** @param lines the edited ones, or null where an edit has moved other lines */
  edited(uri: string, lines: readonly number[] | null): void {
    const sent = this.#sent.get(uri);
    if (sent?.touched) {
      if (lines) for (const line of lines) sent.touched.add(line);
      else sent.touched = null;
    }
    this.changed(uri);
  }

  changed(uri: string): void {
    const snapshot = this.#session.snapshot(uri);
    if (!snapshot || !this.#session.isReady(uri)) return;
    if (snapshot.document.blocks.length <= SMALL) this.#publish(uri);
    else if (!this.#timers.has(uri)) this.#later(uri, PAUSE);
  }

  closed(uri: string): void {
    clearTimeout(this.#timers.get(uri));
    this.#timers.delete(uri);
    if (this.#sent.delete(uri)) this.#outlet.send({ uri, diagnostics: [] });
  }

  stop(): void {
    for (const timer of this.#timers.values()) clearTimeout(timer);
    this.#timers.clear();
  }

  #later(uri: string, pause: number): void {
    const run = (): void => {
      this.#timers.delete(uri);
      this.#publish(uri);
    };
    this.#timers.set(uri, setTimeout(run, pause));
  }

  /** What fails here is logged; the next edit tries again. */
  #publish(uri: string): void {
    try {
      this.#analyseAndSend(uri);
    } catch (error) {
      this.#outlet.log(`diagnostics: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
  }

  #analyseAndSend(uri: string): void {
    const snapshot = this.#session.snapshot(uri);
    if (!snapshot) return;
    snapshot.analyseFor(SLICE);
    const sent = this.#sent.get(uri);
    if (!snapshot.isComplete) {
      this.#later(uri, 0);
      // Something is shown early of a document that was just opened; after that a list is never replaced by part of one.
      if (sent) return;
    }
    const diagnostics = this.#outlet.diagnosticsOf(snapshot);
    if (sent && stillHolds(sent, diagnostics)) return;
    this.#sent.set(uri, { diagnostics, touched: new Set() });
    this.#outlet.send({ uri, version: snapshot.version, diagnostics });
  }
}

/** Whether the editor shows just this list already. */
const stillHolds = ({ diagnostics, touched }: Sent, next: readonly Diagnostic[]): boolean =>
  touched !== null &&
  diagnostics.length === next.length &&
  diagnostics.every((one, at) => isSame(one, next[at] as Diagnostic) && !touched.has(one.range.start.line));

const isSame = (a: Diagnostic, b: Diagnostic): boolean =>
  a.code === b.code &&
  a.severity === b.severity &&
  a.message === b.message &&
  isSameRange(a.range, b.range) &&
  a.relatedInformation?.length === b.relatedInformation?.length &&
  (a.relatedInformation ?? []).every(({ location }, at) =>
    isSameRange(location.range, b.relatedInformation?.[at]?.location.range as Range),
  );

const isSameRange = (a: Range, b: Range): boolean =>
  a.start.line === b.start.line &&
  a.start.character === b.start.character &&
  a.end.line === b.end.line &&
  a.end.character === b.end.character;
