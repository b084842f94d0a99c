/** The server as an editor starts it: a process of its own, spoken to over its standard streams or its channel. */
import { type ChildProcess, fork, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, onTestFinished, test, vi } from 'vitest';
import {
  createProtocolConnection,
  DidOpenTextDocumentNotification,
  HoverRequest,
  InitializedNotification,
  InitializeRequest,
  InlayHintRequest,
  IPCMessageReader,
  IPCMessageWriter,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';

// Starting a process takes its time on a busy machine.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });

const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'dist/lentil.mjs');
const isBuilt = existsSync(command);
if (!isBuilt) console.warn('The built command is not tested as a server: dist/lentil.mjs is missing.');

let folder: string;

beforeAll(async () => {
  mkdirSync(join(root, 'test-output'), { recursive: true });
  folder = mkdtempSync(join(root, 'test-output', 'server-'));
  await build({
    stdin: { contents: "import { serveStdio } from './server/node'; serveStdio();", resolveDir: root },
    outfile: join(folder, 'server.cjs'),
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    mainFields: ['module', 'main'],
    logLevel: 'error',
  });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PROGRAMS: readonly (readonly [string, () => readonly string[]])[] = [
  ['the server alone', () => [join(folder, 'server.cjs')]],
  ...(isBuilt ? [['the built command', () => [command, 'serve']] as const] : []),
];

const TEXT = 'order A\n  R 4.50\n  L -4.50 -0.75 x 022\n  reading 2026-11-24 with FOC-A\n';

/** Ends the process with the test, in case the test does not. */
function owned<P extends ChildProcess>(child: P): P {
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return child;
}

const ended = (child: ChildProcess): Promise<number | null> =>
  new Promise((resolve) => child.once('exit', (code) => resolve(code)));

async function open(client: ProtocolConnection, uri: string): Promise<PublishDiagnosticsParams> {
  client.listen();
  const published = new Promise<PublishDiagnosticsParams>((resolve) =>
    client.onNotification(PublishDiagnosticsNotification.type, resolve),
  );
  await client.sendRequest(InitializeRequest.type, { processId: process.pid, rootUri: null, capabilities: {} });
  await client.sendNotification(InitializedNotification.type, {});
  const textDocument = { uri, languageId: 'lentil', version: 1, text: TEXT };
  await client.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  return published;
}

const overStreams = (child: ChildProcess): ProtocolConnection =>
  createProtocolConnection(
    new StreamMessageReader(child.stdout as NonNullable<typeof child.stdout>),
    new StreamMessageWriter(child.stdin as NonNullable<typeof child.stdin>),
  );

test.each(PROGRAMS)('every byte that %s writes belongs to a message', async (_, program) => {
  const child = owned(spawn(process.execPath, [...program(), '--stdio']));
  const chunks: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => chunks.push(chunk));
  const client = overStreams(child);
  const uri = 'untitled:Untitled-1';
  expect(await open(client, uri)).toMatchObject({ uri, version: 1 });
  const textDocument = { uri };
  const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
  expect(await client.sendRequest(InlayHintRequest.type, { textDocument, range })).not.toEqual([]);
  expect(
    await client.sendRequest(HoverRequest.type, { textDocument, position: { line: 1, character: 3 } }),
  ).not.toBeNull();
  let rest = Buffer.concat(chunks);
  let messages = 0;
  while (rest.length > 0) {
    const head = /^(?:Content-[A-Za-z]+: [^\r\n]+\r\n)+\r\n/.exec(rest.toString('latin1'))?.[0];
    expect(head, `stray output: ${rest.subarray(0, 80)}`).toBeDefined();
    const { length } = head as string;
    const size = Number(/Content-Length: (\d+)/.exec(head as string)?.[1]);
    expect(() => JSON.parse(rest.subarray(length, length + size).toString('utf8'))).not.toThrow();
    rest = rest.subarray(length + size);
    messages++;
  }
  expect(messages).toBeGreaterThanOrEqual(4);
});

test.each(PROGRAMS)('%s ends within a second when its pipe closes', async (_, program) => {
  const child = owned(spawn(process.execPath, [...program(), '--stdio']));
  await open(overStreams(child), 'untitled:Untitled-1');
  const start = performance.now();
  child.stdin.end();
  await ended(child);
  expect(performance.now() - start).toBeLessThan(1_000);
});

test.each(PROGRAMS)('%s speaks over the channel of its parent, and ends with it', async (_, program) => {
  const [script, ...args] = program() as [string, ...string[]];
  const child = owned(fork(script, [...args, '--node-ipc'], { silent: true, execArgv: [] }));
  const client = createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child));
  expect(await open(client, 'untitled:Untitled-1')).toMatchObject({ version: 1 });
  const start = performance.now();
  child.disconnect();
  await ended(child);
  expect(performance.now() - start).toBeLessThan(1_000);
});

test.each(PROGRAMS)('%s reads the bench file beside a file on disk', async (_, program) => {
  const bench = join(folder, 'Müller & co');
  mkdirSync(bench, { recursive: true });
  writeFileSync(join(bench, 'bench.lentil'), 'instrument FOC-A\n  reads-to 0.125\n');
  const child = owned(spawn(process.execPath, [...program(), '--stdio']));
  const { diagnostics } = await open(overStreams(child), pathToFileURL(join(bench, 'week.lentil')).href);
  expect(diagnostics.map(({ code }) => code)).toContain('sign-missing');
  expect(diagnostics.map(({ code }) => code)).not.toContain('instrument-unknown');
});
