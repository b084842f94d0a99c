import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { mustRun } from '../run.mjs';
import { installEditor } from './editor.mjs';
import { packForWorkbench } from './pack.mjs';
import { cache, editor, editorMain, vsix } from './places.mjs';
import { writeSettings } from './settings.mjs';

/**
 * Sets the editor up, installs the extension into it and serves it on this machine only.
 * @param {{ name: string, port?: number, settings?: object, withExtension?: boolean }} options `name` keeps the data of several editors apart
 * @returns {Promise<{ address: string, log: () => string, stop: () => Promise<void> }>}
 */
export async function serveWorkbench({ name, port, settings, withExtension = true }) {
  await installEditor();

  const data = join(cache, name);
  rmSync(data, { recursive: true, force: true });
  writeSettings(data, settings);
  const folders = ['--server-data-dir', data, '--extensions-dir', join(data, 'extensions')];
  if (withExtension) await installExtension(folders);

  const chosen = port ?? (await freePort());
  const quiet = ['--without-connection-token', '--accept-server-license-terms', '--telemetry-level', 'off'];
  const server = spawn(
    process.execPath,
    [editorMain, '--host', '127.0.0.1', '--port', `${chosen}`, ...quiet, ...folders],
    {
      cwd: editor,
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  let log = '';
  for (const stream of [server.stdout, server.stderr]) stream.on('data', (text) => (log += text));
  const ended = new Promise((resolve) => server.on('close', resolve));
  const address = `http://127.0.0.1:${chosen}`;
  await answering(
    address,
    () => server.exitCode === null && server.signalCode === null,
    () => log,
  );

  return {
    address,
    log: () => log,
    stop: async () => {
      server.kill();
      await ended;
    },
  };
}

async function installExtension(folders) {
  await packForWorkbench();
  await mustRun(process.execPath, [editorMain, '--install-extension', vsix, ...folders], {
    cwd: editor,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

/** The address of the editor with a folder, and one of its files if wanted, open in it. */
export function addressOf(server, folder, file) {
  const query = new URLSearchParams({ folder });
  if (file) {
    const uri = `vscode-remote://${new URL(server).host}${join(folder, file)}`;
    query.set('payload', JSON.stringify([['openFile', uri]]));
  }
  return `${server}/?${query}`;
}

async function answering(address, isRunning, log) {
  for (let tries = 0; tries < 150; tries++) {
    if (!isRunning()) throw new Error(`The editor ended:\n${log()}`);
    const answer = await fetch(address).catch(() => undefined);
    if (answer?.ok) return;
    await wait(200);
  }
  throw new Error(`The editor does not answer at ${address}:\n${log()}`);
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
