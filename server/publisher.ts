/**
 * Sends findings to the editor, never for a version that is no longer the newest, and not twice for one version. Making
 * lists takes half of the time at most: after one that took long, the edits in between are published as one. What was
 * sent is remembered here.
 */
import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver';
import { faultOf } from './features/settings-fault';
import type { SettingsFile } from './nearby';
import type { Session } from './session';
import type { Snapshot } from './snapshot';

export interface Outlet {
  readonly send: (params: PublishDiagnosticsParams) => void;
  readonly diagnosticsOf: (snapshot: Snapshot) => Diagnostic[];
  readonly log: (message: string) => void;
}

/** A document that takes longer than this to analyse lets other messages through in between, milliseconds. */
const SLICE = 12;
/** An edit while a document is being opened is not held up longer than this by what is still to be analysed, milliseconds. */
const AFTER_EDIT = 3;

interface Sent {
  /** Before this the next list is not made. */
  readonly rest: number;
  readonly version: number;
  readonly isWhole: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

export class Publisher {
  readonly #session: Session;
  readonly #outlet: Outlet;
  readonly #sent = new Map<string, Sent>();
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();

  /** What was sent of each settings file that cannot be used. */
  #faults = new Map<string, { readonly uri: string; readonly said: string }>();
  #isStopped = false;

  constructor(session: Session, outlet: Outlet) {
    this.#session = session;
    this.#outlet = outlet;
  }

  /** The text of a document has changed, or what it rests on. */
  changed(uri: string): void {
    const snapshot = this.#session.snapshot(uri);
    if (!snapshot || this.#isStopped || !this.#session.isReady(uri)) return;
    const rest = (this.#sent.get(uri)?.rest ?? 0) - performance.now();
    if (rest <= 0) this.#publish(uri);
    else if (!this.#timers.has(uri)) this.#later(uri, rest);
  }

  closed(uri: string): void {
    clearTimeout(this.#timers.get(uri));
    this.#timers.delete(uri);
    if (this.#sent.delete(uri)) this.#outlet.send({ uri, diagnostics: [] });
  }

  /** Marks the settings files that cannot be used, and takes the mark from those that can be again or hold no more. */
  faults(files: readonly SettingsFile[]): void {
    if (this.#isStopped) return;
    const before = this.#faults;
    this.#faults = new Map();
    for (const file of files) {
      const { uri, key } = file;
      const diagnostics = faultOf(file);
      const said = JSON.stringify(diagnostics);
      this.#faults.set(key, { uri, said });
      if (before.get(key)?.said !== said) this.#outlet.send({ uri, diagnostics });
    }
    for (const [key, { uri }] of before) if (!this.#faults.has(key)) this.#outlet.send({ uri, diagnostics: [] });
  }

  /** Nothing is sent any more. */
  stop(): void {
    this.#isStopped = true;
    for (const timer of this.#timers.values()) clearTimeout(timer);
    this.#timers.clear();
  }

  #later(uri: string, pause: number): void {
    const run = (): void => {
      this.#timers.delete(uri);
      this.#publish(uri);
    };
    clearTimeout(this.#timers.get(uri));
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
    const start = performance.now();
    const sent = this.#sent.get(uri);
    const isEdited = sent?.isWhole === false && sent.version !== snapshot.version;
    snapshot.analyseFor(isEdited ? AFTER_EDIT : SLICE);
    if (!snapshot.isComplete) {
      this.#later(uri, 0);
      // While a document is being opened, part of its list is shown for each version; a whole list is never replaced by part of one.
      if (sent?.isWhole || sent?.version === snapshot.version) return;
    }
    const diagnostics = this.#outlet.diagnosticsOf(snapshot);
    const { version, isComplete: isWhole } = snapshot;
    const isKnown = sent?.version === version && isSameList(sent.diagnostics, diagnostics);
    if (!isKnown) this.#outlet.send({ uri, version, diagnostics });
    const end = performance.now();
    this.#sent.set(uri, { rest: end + (end - start), version, isWhole, diagnostics });
  }
}

/**
 * The same list is not sent twice for one version. After an edit it is sent all the same, since an editor moves or drops
 * its marks by itself, and the version tells it that the list holds for the new text.
 */
const isSameList = (a: readonly Diagnostic[], b: readonly Diagnostic[]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);
