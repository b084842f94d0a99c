import { existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { mustRun, npm } from '../run.mjs';
import { findProgram, missingForEditor } from './needs.mjs';
import { codeServerHome, codeServerVersion, editor } from './places.mjs';

const nativeModules = ['@vscode/spdlog', 'native-watchdog', 'node-pty'];
const finished = join(codeServerHome, 'finished');

/**
 * Installs the open-source editor server from its package. Its own install step would download programs, so that step
 * is left out, and the three native modules that the server cannot do without are compiled here.
 */
export async function installEditor() {
  if (existsSync(finished)) return;
  const missing = missingForEditor();
  if (missing.length > 0) throw new Error(`The editor cannot be set up here: ${missing.join(', ')} missing`);

  console.log('Setting up the editor (about a minute, once) …');
  rmSync(codeServerHome, { recursive: true, force: true });
  mkdirSync(codeServerHome, { recursive: true });
  writeFileSync(join(codeServerHome, 'package.json'), '{ "private": true }\n');
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  await npm(['install', `code-server@${codeServerVersion}`, ...quiet], { cwd: codeServerHome });
  await npm(['install', '--omit=dev', ...quiet], { cwd: editor });
  for (const name of nativeModules) await compile(join(editor, 'node_modules', name));
  link(findProgram('rg'), join(editor, 'node_modules', '@vscode', 'ripgrep', 'bin', 'rg'));
  link('node_modules', join(editor, 'node_modules.asar'));
  writeFileSync(finished, '');
}

/** Node's headers are taken from beside Node where they are, so that none have to be downloaded. */
async function compile(folder) {
  const prefix = dirname(dirname(process.execPath));
  const env = { ...process.env };
  if (existsSync(join(prefix, 'include', 'node', 'node.h'))) env.npm_config_nodedir = prefix;
  const log = { cwd: folder, env, stdio: ['ignore', 'ignore', 'inherit'] };
  await mustRun(process.execPath, [gyp(), 'rebuild', '--loglevel=error'], log);
}

/** The compiler driver comes with npm, wherever npm is. */
function gyp() {
  const npmFolder = process.env.npm_execpath ? dirname(dirname(process.env.npm_execpath)) : undefined;
  const beside = join(dirname(dirname(process.execPath)), 'lib', 'node_modules', 'npm');
  const found = [npmFolder, beside]
    .filter(Boolean)
    .map((folder) => join(folder, 'node_modules', 'node-gyp', 'bin', 'node-gyp.js'))
    .find(existsSync);
  if (!found) throw new Error('node-gyp was not found beside npm');
  return found;
}

function link(target, path) {
  mkdirSync(dirname(path), { recursive: true });
  rmSync(path, { force: true, recursive: true });
  symlinkSync(target, path);
}
