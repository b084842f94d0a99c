/** The server as a browser runs it: one file in a worker, with nothing of Node around it. */
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { expect, test, vi } from 'vitest';

vi.setConfig({ testTimeout: 30_000 });

const root = fileURLToPath(new URL('../..', import.meta.url));

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: { readonly diagnostics: readonly { readonly code: string }[] };
  readonly result?: unknown;
}

/** A worker of a browser, as far as the server needs one. */
async function startWorker() {
  const { outputFiles } = await build({
    entryPoints: [`${root}/server/web.ts`],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    mainFields: ['browser', 'module', 'main'],
    logLevel: 'error',
  });
  const received: Message[] = [];
  const worker: { onmessage?: (event: { readonly data: unknown }) => void } & Record<string, unknown> = {
    postMessage: (message: Message) => received.push(message),
    addEventListener: () => undefined,
    queueMicrotask,
    setTimeout,
    clearTimeout,
    performance,
    TextEncoder,
    TextDecoder,
    console,
  };
  worker.self = worker;
  runInContext(outputFiles[0]?.text ?? '', createContext(worker));
  return { received, send: (message: object) => worker.onmessage?.({ data: { jsonrpc: '2.0', ...message } }) };
}

test('the server runs in a worker and publishes findings', async () => {
  const { received, send } = await startWorker();
  send({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
  await expect.poll(() => received.find(({ id }) => id === 1)?.result).toBeDefined();
  send({ method: 'initialized', params: {} });
  const textDocument = { uri: 'untitled:Untitled-1', languageId: 'lentil', version: 1, text: 'order A\n  R 4.50\n' };
  send({ method: 'textDocument/didOpen', params: { textDocument } });
  const codes = () =>
    received
      .find(({ method }) => method === 'textDocument/publishDiagnostics')
      ?.params?.diagnostics.map(({ code }) => code);
  await expect.poll(codes).toContain('sign-missing');
  send({ id: 2, method: 'textDocument/hover', params: { textDocument, position: { line: 1, character: 3 } } });
  await expect.poll(() => received.find(({ id }) => id === 2)?.result).toHaveProperty('contents');
  // The report is loaded late, and there is nothing in a worker to load it from but the one file.
  send({ id: 3, method: 'lentil/report', params: {} });
  await expect.poll(() => received.find(({ id }) => id === 3)?.result).toMatchObject({ title: 'Quality report' });
});
