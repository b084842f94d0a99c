/**
 * Keeps what was told of a file, so that a second run over an unchanged folder judges only what changed. An entry has the
 * name of its file and options, and holds the stamp of everything that the result rests on; whatever does not fit its
 * stamp, or was damaged, counts as absent and is written anew. The folder may be deleted at any time.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { version } from '../../package.json';
import { reasonOf } from '../read-text';
import { UnusableArgument } from '../unusable-argument';
import type { Told, ToldPart, Wanted } from './task';

/** Of what is told, counted up whenever its shape changes. */
const FORM = 3;

/** What an entry is called by, and everything besides the options that its result rests on. */
export interface Judged {
  readonly absolute: string;
  /** Which part of a large file, 0 for a whole one. */
  readonly part: number;
  readonly restsOn: readonly unknown[];
}

export class ResultCache {
  readonly #folder: string;
  readonly #options: string;

  constructor({ cache, ...options }: Wanted & { readonly cache: string }) {
    this.#folder = resolve(cache);
    this.#options = JSON.stringify([version, FORM, options]);
  }

  /** What was told of the same, or what is told now, which is then kept. */
  told(judged: Judged, tell: () => Told[]): Told[] {
    const name = hash([this.#options, judged.absolute, judged.part]);
    const path = join(this.#folder, name.slice(0, 2), `${name.slice(2)}.json`);
    const stamp = hash([this.#options, judged.restsOn]);
    const known = read(path, stamp);
    if (known) return known;
    const told = tell();
    if (!told.some(({ kind }) => kind === 'unreadable')) write(path, stamp, told);
    return told;
  }
}

/** Makes the folder, or says why it cannot be one. */
export function makeCacheFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const isFile = (error as NodeJS.ErrnoException).code === 'EEXIST';
    throw new UnusableArgument(`--cache ${folder}: ${isFile ? 'it is a file' : reasonOf(error)}`);
  }
}

/** The first line holds the stamp and the sum of the rest, so that an entry cut short is noticed. */
function read(path: string, stamp: string): Told[] | null {
  try {
    const text = readFileSync(path, 'utf8');
    const end = text.indexOf('\n');
    const body = text.slice(end + 1);
    return text.slice(0, end) === `${stamp} ${hash(body)}` ? (JSON.parse(body) as Kept[]).map(asTold) : null;
  } catch {
    return null;
  }
}

/** A result that cannot be kept is worked out again the next time, and nothing else is lost. */
function write(path: string, stamp: string, told: readonly Told[]): void {
  const body = JSON.stringify(told.map(asKept));
  try {
    mkdirSync(dirname(path), { recursive: true });
    // Beside it and then in its place. What a stopped run leaves beside it is written over by the next one.
    writeFileSync(`${path}.tmp`, `${stamp} ${hash(body)}\n${body}`);
    renameSync(`${path}.tmp`, path);
  } catch {
    // Full disk, no permission: the answer itself is there.
  }
}

/** Bytes are kept as the text that they stand for. */
type Kept = Exclude<Told, ToldPart> | (Omit<ToldPart, 'text'> & { readonly text: string });

const asKept = (told: Told): Kept =>
  told.kind === 'part' ? { ...told, text: Buffer.from(told.text.buffer).toString() } : told;

const asTold = (kept: Kept): Told =>
  kept.kind === 'part' ? { ...kept, text: new Uint8Array(Buffer.from(kept.text)) } : kept;

const hash = (content: unknown): string =>
  createHash('sha256')
    .update(typeof content === 'string' ? content : JSON.stringify(content))
    .digest('hex');
