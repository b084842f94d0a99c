import { readdirSync, realpathSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { reasonOf } from './read-text';

export const STANDARD_INPUT = '-';

/** Something to read, by the path it is told under, or a path that leads nowhere. */
export type Input =
  | { readonly kind: 'file'; readonly path: string; readonly absolute: string }
  | { readonly kind: 'standard-input' }
  | { readonly kind: 'nothing'; readonly path: string; readonly reason: string }
  /** A folder without any `.lentil` file. */
  | { readonly kind: 'empty'; readonly path: string };

/**
 * The inputs that the paths of a command line stand for, one by one. Folders are searched to any depth in the order of
 * their names, without hidden folders and `node_modules`; patterns are matched the same way. A file that comes up twice is
 * given once.
 */
export async function* inputsOf(paths: readonly string[]): AsyncGenerator<Input> {
  const seen = new Set<string>();
  for (const path of paths) {
    if (path === STANDARD_INPUT) {
      if (!seen.has(path)) yield { kind: 'standard-input' };
      seen.add(path);
      continue;
    }
    const shown = forwardSlashes(path);
    try {
      if (statSync(path).isDirectory()) yield* filesIn(shown, seen);
      else yield* once(shown, seen);
    } catch (error) {
      // A file may bear any name, so that a pattern is only what names nothing.
      yield* matching(shown, seen, reasonOf(error));
    }
  }
}

/**
 * What a shell would have put in the place of the pattern, and what most shells do not know: `**`. The library is loaded
 * here, since a start without a pattern is a good part faster without it.
 * @param reason why there is no file of this very name
 */
async function* matching(path: string, seen: Set<string>, reason: string): AsyncGenerator<Input> {
  const { globSync, isDynamicPattern } = await import('tinyglobby');
  if (!isDynamicPattern(path)) {
    yield { kind: 'nothing', path, reason };
    return;
  }
  const paths = globSync(path, { ignore: '**/node_modules/**', expandDirectories: false, onlyFiles: true });
  if (paths.length === 0) yield { kind: 'nothing', path, reason: 'no file matches it' };
  for (const one of paths.sort()) yield* once(one, seen);
}

function* filesIn(folder: string, seen: Set<string>): Generator<Input> {
  let found = false;
  for (const path of walk(folder.replace(/\/+$/, '') || '/')) {
    found = true;
    if (typeof path === 'string') yield* once(path, seen);
    else yield path;
  }
  if (!found) yield { kind: 'empty', path: folder };
}

function* walk(folder: string): Generator<string | Extract<Input, { kind: 'nothing' }>> {
  let entries: ReturnType<typeof list>;
  try {
    entries = list(folder);
  } catch (error) {
    yield { kind: 'nothing', path: folder, reason: reasonOf(error) };
    return;
  }
  for (const entry of entries) {
    const path = folder === '.' ? entry.name : `${folder === '/' ? '' : folder}/${entry.name}`;
    if (entry.isDirectory()) {
      if (!entry.name.startsWith('.') && entry.name !== 'node_modules') yield* walk(path);
    } else if (entry.name.toLowerCase().endsWith('.lentil')) yield path;
  }
}

const list = (folder: string) =>
  readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));

function* once(path: string, seen: Set<string>): Generator<Input> {
  const absolute = resolve(path);
  const real = realPath(absolute);
  if (!seen.has(real)) yield { kind: 'file', path, absolute };
  seen.add(real);
}

function realPath(absolute: string): string {
  try {
    return realpathSync(absolute);
  } catch {
    return absolute;
  }
}

const forwardSlashes = (path: string): string => (process.platform === 'win32' ? path.replaceAll('\\', '/') : path);
