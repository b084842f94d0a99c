import { SETTINGS_FILE } from '../orders';

/** Addresses of documents. Editors spell one file in several ways, so addresses are compared in a normal form. */

const schemeOf = (uri: string): string => /^[^:]*/.exec(uri)?.[0].toLowerCase() ?? '';

/**
 * Whether a document is one of its own: a file, a text not saved yet, or a file of the file system that a workspace
 * folder lies in. What any other scheme shows, such as an older version of a file, is a copy and would be told twice.
 */
export const isServed = (uri: string, folders: readonly string[]): boolean =>
  ['file', 'untitled', ...folders.map(schemeOf)].includes(schemeOf(uri));

export const isUntitled = (uri: string): boolean => schemeOf(uri) === 'untitled';

/** The form by which two spellings of an address are compared: percent signs undone, drive letter and scheme in lower case. */
export function keyOf(uri: string): string {
  const plain = decoded(uri).replace(/\\/g, '/').replace(/\/+$/, '');
  return plain.replace(/^([A-Za-z][\w+.-]*:\/*)([A-Za-z]:)?/, (start) => start.toLowerCase());
}

function decoded(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    // A stray percent sign is part of the name.
    return uri;
  }
}

/** Whether a document, by its key, lies in a folder or is the folder itself. */
export const isInside = (key: string, folder: string): boolean => key === folder || key.startsWith(`${folder}/`);

export const BENCH_FILE = 'bench.lentil';

export const isBenchFile = (uri: string): boolean => keyOf(uri).endsWith(`/${BENCH_FILE}`);

/** Whether it is such a file as bears on the verdicts of the documents in its folder and below it. */
export const isNearbyFile = (uri: string): boolean => isBenchFile(uri) || keyOf(uri).endsWith(`/${SETTINGS_FILE}`);

/**
 * Where the bench file of a document may stand, nearest first: its own folder and those above it, up to the root. A bench
 * file itself refers to no other.
 * @param top key of a folder above which nothing is looked for, or null
 */
export const benchAddresses = (uri: string, top: string | null): string[] =>
  isBenchFile(uri) ? [] : addressesAbove(uri, BENCH_FILE, top);

/** The same of its settings file. */
export const settingsAddresses = (uri: string, top: string | null): string[] => addressesAbove(uri, SETTINGS_FILE, top);

function addressesAbove(uri: string, name: string, top: string | null): string[] {
  if (isUntitled(uri)) return [];
  const addresses: string[] = [];
  const root = /^[^:]+:\/\/[^/]*/.exec(uri)?.[0].length ?? 0;
  for (let end = uri.lastIndexOf('/'); end >= root && end > 0; end = uri.lastIndexOf('/', end - 1)) {
    const folder = uri.slice(0, end);
    addresses.push(`${folder}/${name}`);
    if (keyOf(folder) === top) break;
  }
  return addresses;
}

/** How a file is named to a person: by its path in the workspace folder, or by its own name outside of one. */
export function pathBelow(folder: string | undefined, uri: string): string {
  const key = keyOf(uri);
  return key.slice(folder === undefined ? key.lastIndexOf('/') + 1 : keyOf(folder).length + 1);
}
