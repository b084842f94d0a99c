/** Addresses of documents. Editors spell one file in several ways, so addresses are compared in a normal form. */

/** Only what lies on disk and what has not been saved yet is looked at; a file shown by another scheme is a copy. */
const SERVED = /^(?:file|untitled):/i;

export const isServed = (uri: string): boolean => SERVED.test(uri);

export const isUntitled = (uri: string): boolean => /^untitled:/i.test(uri);

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

/**
 * Where the bench file of a document may stand, nearest first: its own folder and those above it, up to the workspace
 * folder that holds it, or to the root where none does. A bench file itself refers to no other.
 * @param top key of the workspace folder
 */
export function benchAddresses(uri: string, top: string | null): string[] {
  if (isUntitled(uri) || isBenchFile(uri)) return [];
  const addresses: string[] = [];
  const root = /^[^:]+:\/\/[^/]*/.exec(uri)?.[0].length ?? 0;
  for (let end = uri.lastIndexOf('/'); end >= root && end > 0; end = uri.lastIndexOf('/', end - 1)) {
    const folder = uri.slice(0, end);
    addresses.push(`${folder}/${BENCH_FILE}`);
    if (keyOf(folder) === top) break;
  }
  return addresses;
}
