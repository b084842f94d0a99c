/** An editor that does whatever comes: the same seed gives the same session. */
import { setTimeout as wait } from 'node:timers/promises';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import {
  CancellationTokenSource,
  CompletionRequest,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  FileChangeType,
  HoverRequest,
  type Position,
  type Range,
} from 'vscode-languageserver/node';
import type { Wire } from '../../support/wire';

export const FOLDER = 'file:///bench';
const URIS = ['bench.lentil', 'a.lentil', 'days/b.lentil', 'days/bench.lentil', 'days/deep/c.lentil'].map(
  (path) => `${FOLDER}/${path}`,
);
const UNSAVED = 'untitled:Untitled-1';

const PIECES = [
  'order QL-1\n',
  'order "QL 2"\n  R -1.00\n  L -1.00\n  design single-vision\n  pd 64\n',
  'R 4.50\n',
  'L -4.25 -1.00 x 168\n',
  'standard z80.1-2015\n',
  'standard house\n',
  'instrument FOC-A\n  reads-to 0.125\n',
  'instrument FOC-B\n',
  'tolerance house from z80.1-2015\n  power 0.06\n',
  'defaults\n  lens resin-1.50\n',
  '  reading 2026-11-24 with FOC-A\n    R -1.25\n    L -1.00 with FOC-B\n    pd 64\n',
  '  remake-of QL-1 "axis"\n',
  '\r\n',
  '\r',
  '\n',
  '👓 ',
  '# ',
  '-',
  ' x 5',
  '"',
  '\uFEFF',
] as const;

type Settings = {
  readonly diagnostics?: { readonly most?: number; readonly levels?: unknown };
  readonly [name: string]: unknown;
} | null;

export const SETTINGS: readonly Settings[] = [
  null,
  { standard: 'z80.1-2015' },
  { standard: 'iso-21987-2017', near: { percent: 50 } },
  { diagnostics: { most: 3, levels: { 'quarter-step': 'off', 'eye-missing': 'hint' } } },
  { guard: 'accept-when-sure', hints: { cylinder: 'minus', show: ['verdict', 'ordered'] } },
];

const ACTS = [
  'edit',
  'edit',
  'edit',
  'edit',
  'edit',
  'undo',
  'openOne',
  'openOne',
  'closeOne',
  'ask',
  'ask',
  'write',
  'delete',
  'rename',
  'changeSettings',
  'folders',
  'rest',
] as const;

export class RandomSession {
  readonly files = new Map<string, string>();
  readonly open = new Map<string, string>();
  readonly #history = new Map<string, string[]>();
  readonly #random;
  readonly #pending: Promise<unknown>[] = [];
  settings: Settings = null;
  hasFolder = true;
  wire!: Wire;

  constructor(seed: number) {
    this.#random = xoroshiro128plus(seed);
  }

  upTo(most: number): number {
    return uniformInt(this.#random, 0, most);
  }

  oneOf<T>(all: readonly T[]): T {
    return all[this.upTo(Math.max(0, all.length - 1))] as T;
  }

  async step(): Promise<void> {
    await this[this.oneOf(ACTS)]();
  }

  text(): string {
    return Array.from({ length: this.upTo(8) }, () => this.oneOf(PIECES)).join('');
  }

  async edit(): Promise<void> {
    const uri = this.oneOf([...this.open.keys()]);
    if (uri === undefined) return;
    const text = this.open.get(uri) as string;
    if (this.upTo(30) === 0) {
      const whole = this.text();
      return this.#put(uri, [{ text: whole }], whole);
    }
    const changes: { readonly range: Range; readonly text: string }[] = [];
    let now = text;
    for (let count = this.upTo(2); count >= 0; count--) {
      const from = betweenLetters(now, this.upTo(now.length));
      const to = this.upTo(3) === 0 ? betweenLetters(now, Math.min(now.length, from + this.upTo(40))) : from;
      const typed = this.oneOf(PIECES);
      changes.push({ range: { start: placeAt(now, from), end: placeAt(now, to) }, text: typed });
      now = now.slice(0, from) + typed + now.slice(to);
    }
    await this.#put(uri, changes, now);
  }

  async undo(): Promise<void> {
    const uri = this.oneOf([...this.open.keys()]);
    const before = uri === undefined ? undefined : this.#history.get(uri)?.pop();
    if (uri === undefined || before === undefined) return;
    this.open.set(uri, before);
    await this.wire.change(uri, { text: before });
  }

  async #put(uri: string, changes: Parameters<Wire['change']>[1][], text: string): Promise<void> {
    this.#history.get(uri)?.push(this.open.get(uri) as string);
    this.open.set(uri, text);
    await this.wire.change(uri, ...changes);
  }

  async ask(): Promise<void> {
    const uri = this.oneOf([...this.open.keys()]);
    if (uri === undefined) return;
    const position = placeAt(this.open.get(uri) as string, this.upTo(200));
    const source = new CancellationTokenSource();
    const type = this.oneOf([HoverRequest.type, CompletionRequest.type] as const);
    const answer = this.wire.client.sendRequest(
      type as typeof HoverRequest.type,
      { textDocument: { uri }, position },
      source.token,
    );
    // Cancelled and outdated questions are refused; what the others are told is compared at the end.
    this.#pending.push(answer.catch(() => null));
    if (this.upTo(1) === 0) source.cancel();
  }

  async write(): Promise<void> {
    const uri = this.oneOf(URIS);
    const type = this.files.has(uri) ? FileChangeType.Changed : FileChangeType.Created;
    this.files.set(uri, this.text());
    await this.#onDisk(uri, type);
  }

  async delete(): Promise<void> {
    const uri = this.oneOf([...this.files.keys()]);
    if (uri === undefined) return;
    this.files.delete(uri);
    await this.#onDisk(uri, FileChangeType.Deleted);
  }

  /** As editors do it: the old name is closed and gone, the new one comes and is opened. */
  async rename(): Promise<void> {
    const [from, to] = [this.oneOf([...this.open.keys()].filter((uri) => uri !== UNSAVED)), this.oneOf(URIS)];
    if (from === undefined || this.open.has(to)) return;
    const text = this.open.get(from) as string;
    await this.#close(from);
    this.files.delete(from);
    this.files.set(to, text);
    await this.#onDisk(from, FileChangeType.Deleted);
    await this.#onDisk(to, FileChangeType.Created);
    await this.#open(to, text);
  }

  async changeSettings(settings: Settings = this.oneOf(SETTINGS)): Promise<void> {
    this.settings = settings;
    await this.wire.client.sendNotification(DidChangeConfigurationNotification.type, { settings: null });
  }

  async folders(): Promise<void> {
    this.hasFolder = !this.hasFolder;
    const folder = [{ uri: FOLDER, name: '' }];
    const event = { added: this.hasFolder ? folder : [], removed: this.hasFolder ? [] : folder };
    await this.wire.client.sendNotification(DidChangeWorkspaceFoldersNotification.type, { event });
  }

  rest(): Promise<void> {
    return wait(this.upTo(6));
  }

  async openOne(): Promise<void> {
    const uri = this.oneOf([...URIS, UNSAVED]);
    if (!this.open.has(uri)) await this.#open(uri, this.files.get(uri) ?? this.text());
  }

  async closeOne(): Promise<void> {
    const uri = this.oneOf([...this.open.keys()]);
    if (uri !== undefined) await this.#close(uri);
  }

  async settle(): Promise<void> {
    await Promise.all(this.#pending);
  }

  async #open(uri: string, text: string): Promise<void> {
    this.open.set(uri, text);
    this.#history.set(uri, []);
    await this.wire.open(uri, text);
  }

  async #close(uri: string): Promise<void> {
    this.open.delete(uri);
    await this.wire.close(uri);
  }

  #onDisk(uri: string, type: FileChangeType): Promise<void> {
    return this.wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
  }
}

/** The place of an offset as an editor counts it; lines end as the protocol says. */
export function placeAt(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

/** An editor has no place between CR and LF. */
const betweenLetters = (text: string, offset: number): number =>
  text[offset - 1] === '\r' && text[offset] === '\n' ? offset + 1 : offset;
