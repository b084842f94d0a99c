/** The server in a process of its own. */
import { opendir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createConnection, IPCMessageReader, IPCMessageWriter, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './connection';
import { EXTENSION, type FileText, isPassedOver, LARGEST, type Platform } from './platform';

/** Files of the disk. */
export const platform: Platform = {
  reads: (uri) => uri.toLowerCase().startsWith('file:'),
  read: async (uri) => {
    let path: string;
    try {
      path = fileURLToPath(uri);
    } catch {
      // An address that is no path has no text.
      return null;
    }
    try {
      return decoded(await readFile(path));
    } catch {
      return (await isThere(path)) ? { error: 'there is no permission to read it, or it is a folder' } : null;
    }
  },
  list: async function* (folder) {
    try {
      yield* filesBelow(fileURLToPath(folder));
    } catch {
      // An address that is no path has no files.
    }
  },
};

/** Bytes that are no text are refused, as the command refuses them. */
function decoded(bytes: Uint8Array): FileText {
  if (bytes.includes(0)) return { error: 'it is damaged or no text; save it as UTF-8' };
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return { error: 'it is not UTF-8 text' };
  }
}

async function isThere(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}

/** Links are not followed, so that no folder is walked twice; what cannot be read is left out. */
async function* filesBelow(folder: string): AsyncGenerator<string> {
  const folders: string[] = [];
  try {
    for await (const entry of await opendir(folder)) {
      const path = join(folder, entry.name);
      if (entry.isDirectory() && !isPassedOver(entry.name)) folders.push(path);
      else if (entry.isFile() && entry.name.toLowerCase().endsWith(EXTENSION) && (await sizeOf(path)) <= LARGEST)
        yield pathToFileURL(path).href;
    }
  } catch {
    return;
  }
  for (const inside of folders) yield* filesBelow(inside);
}

async function sizeOf(path: string): Promise<number> {
  try {
    return (await stat(path)).size;
  } catch {
    return Number.POSITIVE_INFINITY;
  }
}

/**
 * Serves an editor over standard input and output, or over the channel of the parent process when started with
 * `--node-ipc`. Ends with the editor.
 */
export function serveStdio(): void {
  const connection = process.argv.includes('--node-ipc') ? overChannel() : overStreams();
  serve(connection, platform);
  connection.listen();
}

function overChannel() {
  // The channel does not tell its reader when the other end is gone.
  process.on('disconnect', () => process.exit(1));
  return createConnection(ProposedFeatures.all, new IPCMessageReader(process), new IPCMessageWriter(process));
}

/** Only framed messages may reach standard output, so whatever a library prints goes to standard error instead. */
function overStreams() {
  for (const name of ['log', 'info', 'debug', 'dir', 'table'] as const) console[name] = console.error;
  process.stdout.on('error', () => process.exit(1));
  return createConnection(ProposedFeatures.all, process.stdin, process.stdout);
}
