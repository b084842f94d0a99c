/**
 * Files that only the editor can read, such as those of a workspace in a browser. Two requests of our own ask for them;
 * an editor that answers them says so when it starts the server (`initializationOptions: { files: true }`), and no other
 * is asked.
 */
import type { Connection } from 'vscode-languageserver';
import type { Platform } from './platform';

/** `{ folder }`; the answer is a list of addresses. */
export const LIST_FILES = 'lentil/listFiles';
/** `{ uri }`; the answer is the text, or null. */
export const READ_FILE = 'lentil/readFile';

/** Reads from the platform what it can read, and asks the editor for the rest. */
export function withClientFiles(platform: Platform, connection: Connection, isOffered: () => boolean): Platform {
  const ask = async (method: string, params: object): Promise<unknown> => {
    if (!isOffered()) return null;
    try {
      return await connection.sendRequest(method, params);
    } catch {
      // The editor may be gone, or refuse.
      return null;
    }
  };
  return {
    reads: platform.reads,
    read: async (uri) => {
      if (platform.reads(uri)) return platform.read(uri);
      const text = await ask(READ_FILE, { uri });
      return typeof text === 'string' ? text : null;
    },
    list: async function* (folder) {
      if (platform.reads(folder)) return yield* platform.list(folder);
      const found = await ask(LIST_FILES, { folder });
      if (Array.isArray(found)) yield* found.filter((uri) => typeof uri === 'string');
    },
  };
}
