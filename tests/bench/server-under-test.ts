/** A language server in a process of its own, driven the way an editor drives it. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';

export interface ServerUnderTest {
  /** Script and arguments for Node. */
  readonly command: readonly string[];
  readonly language: string;
  readonly name: string;
  readonly text: string;
  readonly settings?: unknown;
}

export interface OpenServer {
  readonly uri: string;
  /** Milliseconds from opening the document to its first diagnostics. */
  readonly first: number;
  /** Waits until the server has nothing more to do: a large file is analysed on after its first list. */
  rest(): Promise<void>;
  /** Replaces one character and resolves with the milliseconds until its diagnostics. */
  type(line: number, character: number, text: string): Promise<number>;
  /** Asks one question and resolves with the milliseconds until its answer. */
  ask(method: string, params: object): Promise<number>;
  close(): void;
}

const LONGEST_WAIT = 120_000;
/** A server that tells nothing for so long has come to rest, milliseconds. */
const QUIET = 5_000;
/** How often is looked whether a server works, milliseconds, and how often in a row it has to be found idle. */
const PROBE = 250;
const IDLE = 4;

/** Hundredths of a second of CPU time that a process has used; null where the system does not tell. */
function cpuTicks(pid: number | undefined): number | null {
  try {
    // The fields behind the name of the program, which may hold blanks: user and system time are the 12th and 13th.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return Number(fields[11]) + Number(fields[12]);
  } catch {
    return null;
  }
}

/** Starts the server, opens the document and waits for its first diagnostics. */
export async function openServer({ command, language, name, text, settings }: ServerUnderTest): Promise<OpenServer> {
  const child = spawn(process.execPath, [...command], { stdio: ['pipe', 'pipe', 'ignore'] });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const uri = `file:///bench/${name}`;
  let told: (() => void) | undefined;
  const diagnostics = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const late = setTimeout(
        () => reject(new Error(`${language} server: no diagnostics in ${LONGEST_WAIT} ms`)),
        LONGEST_WAIT,
      );
      told = () => {
        clearTimeout(late);
        resolve();
      };
    });
  let heard = 0;
  connection.onNotification('textDocument/publishDiagnostics', () => {
    heard = performance.now();
    told?.();
  });
  connection.onRequest('workspace/configuration', ({ items }: { items: { section?: string }[] }) =>
    items.map(({ section }) => (settings as Record<string, unknown> | undefined)?.[section ?? ''] ?? null),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: null,
    capabilities: {
      workspace: { configuration: true, didChangeConfiguration: {} },
      textDocument: {
        publishDiagnostics: { versionSupport: true },
        completion: { completionItem: { snippetSupport: true, resolveSupport: { properties: ['documentation'] } } },
      },
    },
  });
  await connection.sendNotification('initialized', {});
  if (settings) await connection.sendNotification('workspace/didChangeConfiguration', { settings });
  const opened = performance.now();
  const first = diagnostics();
  await connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: language, version: 1, text },
  });
  await first;
  const firstTaken = performance.now() - opened;
  let version = 1;
  return {
    uri,
    first: firstTaken,
    async rest() {
      let used = cpuTicks(child.pid);
      for (let idle = 0; idle < IDLE; ) {
        await wait(PROBE);
        const now = cpuTicks(child.pid);
        // Where the system does not tell what a process has used, only its silence is left to go by.
        const isBusy = now === null || used === null ? performance.now() - heard < QUIET : now - used > 1;
        idle = isBusy ? 0 : idle + 1;
        used = now;
      }
    },
    async type(line, character, typed) {
      const start = performance.now();
      const answer = diagnostics();
      const range = { start: { line, character }, end: { line, character: character + 1 } };
      await connection.sendNotification('textDocument/didChange', {
        textDocument: { uri, version: ++version },
        contentChanges: [{ range, text: typed }],
      });
      await answer;
      return performance.now() - start;
    },
    async ask(method, params) {
      const start = performance.now();
      await connection.sendRequest(method, params);
      return performance.now() - start;
    },
    close() {
      connection.dispose();
      child.kill();
    },
  };
}
