import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type LentilDocument, parseDocument } from '../orders';
import { readText } from './read-text';

const NAME = 'bench.lentil';

export interface BenchFile {
  readonly path: string;
  readonly text: string | null;
  /** The document, or why it could not be read. */
  readonly document: LentilDocument | null;
  readonly error: string | null;
}

/** Finds the `bench.lentil` that a file may refer to: the nearest one in its folder or above. Each is read once. */
export class BenchFiles {
  readonly #byFolder = new Map<string, BenchFile | null>();

  /** @param file absolute path, or null for standard input; a bench file itself refers to no other */
  nearestTo(file: string | null): BenchFile | null {
    if (file === null) return this.nearestIn(process.cwd());
    return basename(file) === NAME ? null : this.nearestIn(dirname(file));
  }

  nearestIn(folder: string): BenchFile | null {
    const known = this.#byFolder.get(folder);
    if (known !== undefined) return known;
    const path = join(folder, NAME);
    const parent = dirname(folder);
    const found = existsSync(path) ? read(path) : parent === folder ? null : this.nearestIn(parent);
    this.#byFolder.set(folder, found);
    return found;
  }
}

function read(path: string): BenchFile {
  const result = readText(path);
  return 'error' in result
    ? { path, text: null, document: null, error: result.error }
    : { path, text: result.text, document: parseDocument(result.text), error: null };
}
