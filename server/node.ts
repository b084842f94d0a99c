/** The server in a process of its own. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { createConnection, IPCMessageReader, IPCMessageWriter, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from './connection';
import type { Platform } from './platform';

const platform: Platform = {
  read: async (uri) => {
    try {
      return await readFile(fileURLToPath(uri), 'utf8');
    } catch {
      return null;
    }
  },
};

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
