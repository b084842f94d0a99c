/** What is handed to a thread and what comes back, as plain data. */
import type { Cuts, LongText } from '../../orders';
import type { ElsewhereOfFile } from '../elsewhere';
import type { GivenSettings } from '../settings-files';

export type CheckFormat = 'text' | 'json' | 'jsonl' | 'sarif' | 'junit';

/** What the command line says. */
export interface Wanted {
  readonly format: CheckFormat;
  readonly brief: boolean;
  readonly settings: GivenSettings;
  /** Whether text is painted for a terminal. */
  readonly painted: boolean;
  /** The folder of the cache, or null for none. */
  readonly cache: string | null;
}

/** A file by the path it is told under. */
export interface FilePath {
  readonly path: string;
  /** Null for standard input. */
  readonly absolute: string | null;
  /** Orders of other files by a name that one of its own has. */
  readonly elsewhere: ElsewhereOfFile;
}

/** Small files, read where they are judged; some blocks of a large one, which was read and cut before; or one that could not be read. */
export type Task =
  | { readonly kind: 'files'; readonly files: readonly FilePath[] }
  | { readonly kind: 'part'; readonly file: FilePath; readonly part: Part }
  | { readonly kind: 'unreadable'; readonly path: string; readonly error: string };

export interface Part {
  readonly cuts: Cuts;
  /** Which part of the file it is, counted from 0, and the number of its first block in the file. */
  readonly number: number;
  readonly first: number;
  readonly isLast: boolean;
  /** The blocks of the file that others may rest on, each with its number and as the text it is made from. */
  readonly holding: readonly (readonly [at: number, cut: Cuts])[];
  readonly sharedNames: LongText['sharedNames'];
}

/** What a task comes to, in the order in which it is told. */
export type Told =
  | { readonly kind: 'open'; readonly path: string }
  | ToldPart
  | { readonly kind: 'close' }
  | { readonly kind: 'unreadable'; readonly path: string; readonly error: string }
  | { readonly kind: 'complaint'; readonly text: string };

/** Blocks of the open file. */
export interface ToldPart {
  readonly kind: 'part';
  /** Ready to go out, as UTF-8. */
  readonly text: Uint8Array<ArrayBuffer>;
  /** For the writer of the format. */
  readonly note: unknown;
  readonly orders: number;
  readonly failed: boolean;
}
