/**
 * Order numbers that several files of one run have, with other powers in them. Looked for before anything is judged, so
 * that the verdict itself says it. The files are read for it once more, headers only; of each number a hash is kept, of
 * what stands below it another one, and only where those differ are orders read in full.
 */
import { readFileSync } from 'node:fs';
import { type OrderElsewhere, type OrderPowers, orderPowersIn } from '../orders';
import type { Input } from './inputs';
import { readText } from './read-text';

/** By the name of the order, as plain data. */
export type ElsewhereOfFile = readonly (readonly [name: string, others: readonly OrderElsewhere[]])[];

type InputFile = Extract<Input, { kind: 'file' }>;

const NONE: ElsewhereOfFile = [];

/**
 * What each file has to be told of the others, by its absolute path. What comes from standard input is compared with
 * nothing, since it can be read but once.
 */
export function ordersElsewhere(inputs: readonly Input[]): (absolute: string | null) => ElsewhereOfFile {
  const files = inputs.filter((input): input is InputFile => input.kind === 'file');
  if (files.length < 2) return () => NONE;
  const suspects = filesToCompare(files);
  if (suspects.size === 0) return () => NONE;
  const byName = new Map<string, Told[]>();
  for (const [at, numbers] of suspects) {
    const { path, absolute } = files[at] as InputFile;
    const read = readText(absolute);
    if ('error' in read) continue;
    for (const one of orderPowersIn(read.text, (name) => numbers.has(hashOf(inBytes(name)))))
      put(byName, one.name, { ...one, path, absolute });
  }
  const told = new Map<string, (readonly [string, readonly OrderElsewhere[]])[]>();
  for (const [name, all] of byName) {
    // Two of each kind are enough for every file to be told of one that it is not itself.
    const kinds = new Map<string, Told[]>();
    for (const one of all) put(kinds, one.powers, one);
    if (kinds.size < 2) continue;
    const few = [...kinds.values()].flatMap(twoFiles);
    for (const absolute of new Set(all.map((one) => one.absolute))) {
      const others = few.filter((one) => one.absolute !== absolute).map(asOther);
      if (others.length > 0) put(told, absolute, [name, others] as const);
    }
  }
  return (absolute) => (absolute === null ? NONE : (told.get(absolute) ?? NONE));
}

interface Told extends OrderPowers {
  readonly path: string;
  readonly absolute: string;
}

const asOther = ({ path, line, powers }: Told): OrderElsewhere => ({ path, line, powers });

/** The first of its kind, and the first one in another file. */
function twoFiles(all: readonly Told[]): readonly Told[] {
  const [first] = all;
  const second = all.find(({ absolute }) => absolute !== first?.absolute);
  return [first, second].filter((one) => one !== undefined);
}

function put<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const known = map.get(key);
  if (known) known.push(value);
  else map.set(key, [value]);
}

/** A header of an order. Files are read byte by byte, for a name need only be told from another one here. */
const HEADER = /^(?:\xef\xbb\xbf)?[ \t]*order[ \t]+(?:"((?:[^"\r\n]|"")*)"|([^\s"#]+))/gim;

/** The files that have to be read in full, by their number, with the hashes of the order numbers to look for. */
function filesToCompare(files: readonly InputFile[]): ReadonlyMap<number, ReadonlySet<number>> {
  const places = new Map<number, number>();
  // Of the order numbers in the order in which they came: the first file, the hash of what stands below the number.
  const firstFile: number[] = [];
  const content: number[] = [];
  const moreFiles = new Map<number, number[]>();
  const differs = new Set<number>();
  for (const [file, { absolute }] of files.entries()) {
    for (const { number, below } of numbersIn(absolute)) {
      const known = places.get(number);
      if (known === undefined) {
        places.set(number, firstFile.length);
        firstFile.push(file);
        content.push(below);
        continue;
      }
      if (content[known] !== below) differs.add(number);
      if (firstFile[known] !== file) put(moreFiles, number, file);
    }
  }
  const wanted = new Map<number, Set<number>>();
  for (const number of differs) {
    const more = moreFiles.get(number);
    if (!more) continue;
    for (const file of [firstFile[places.get(number) as number] as number, ...more]) {
      const numbers = wanted.get(file) ?? new Set();
      wanted.set(file, numbers.add(number));
    }
  }
  return new Map([...wanted].sort(([a], [b]) => a - b));
}

interface NumberIn {
  /** Hash of the name, and of the text from it to the next order. */
  readonly number: number;
  readonly below: number;
}

function numbersIn(absolute: string): readonly NumberIn[] {
  let text: string;
  try {
    text = readFileSync(absolute, 'latin1');
  } catch {
    // It is told when its turn comes.
    return [];
  }
  const found = [...text.matchAll(HEADER)];
  return found.map((header, at) => {
    const name = header[1]?.replaceAll('""', '"') ?? header[2] ?? '';
    return { number: hashOf(name), below: hashOf(text, header.index, found[at + 1]?.index ?? text.length) };
  });
}

const inBytes = (name: string): string => Buffer.from(name).toString('latin1');

/** FNV-1a in two halves, 53 bits of it (Fowler, Noll and Vo; constants from memory). */
function hashOf(text: string, start = 0, end = text.length): number {
  let [low, high] = [0x811c9dc5, 0x01000193];
  for (let at = start; at < end; at++) {
    const unit = text.charCodeAt(at);
    low = Math.imul(low ^ unit, 0x01000193);
    high = Math.imul(high ^ unit, 0x85ebca6b);
  }
  return (high & 0x1fffff) * 0x1_0000_0000 + (low >>> 0);
}
