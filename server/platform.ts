/** A text, null where there is no such file, or why a file that is there cannot be read. */
export type FileText = string | null | { readonly error: string };

/** Files, as the server reads them: from the place it runs in, or through the editor. */
export interface Files {
  /** Text of a file by its address. */
  readonly read: (uri: string) => Promise<FileText>;
  /**
   * Addresses of the `.lentil` files in a folder and below it, one after the other; the one who asks may stop at any of
   * them. Folders that hold no work of people are left out, and so are files too large to be looked through for names.
   */
  readonly list: (folder: string) => AsyncIterable<string>;
}

/** What the server needs from the place it runs in. */
export interface Platform extends Files {
  /** Whether files of such an address can be read here; the others are asked of the editor. */
  readonly reads: (uri: string) => boolean;
}

/** A place without files of its own. */
export const NO_FILES: Platform = { reads: () => false, read: async () => null, list: async function* () {} };

/** A larger file is only read when it is opened, bytes. It would hold some twenty thousand orders. */
export const LARGEST = 8_000_000;

export const EXTENSION = '.lentil';

/** Packages and what tools keep for themselves are no work of the bench. */
export const isPassedOver = (folder: string): boolean => folder.startsWith('.') || folder === 'node_modules';
