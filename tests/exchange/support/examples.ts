import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Analysis, analyse, parseDocument } from '../../../orders';

export const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Paths of all example files from the project’s folder, sorted. */
export const examplePaths: readonly string[] = readdirSync(join(root, 'examples'), { recursive: true })
  .map((name) => `examples/${String(name).replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.lentil'))
  .sort();

export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

/** What the library says about an example, with the nearest bench file as the command would find it. */
export function analysisOf(path: string): Analysis {
  const bench = path.endsWith('bench.lentil') ? null : nearestBench(dirname(path));
  return analyse(textOf(path), { shared: bench ? [parseDocument(textOf(bench))] : [] });
}

function nearestBench(folder: string): string | null {
  const path = `${folder}/bench.lentil`;
  if (existsSync(join(root, path))) return path;
  return folder === '.' ? null : nearestBench(dirname(folder));
}
