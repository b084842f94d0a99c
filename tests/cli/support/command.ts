import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, vi } from 'vitest';

export const root = fileURLToPath(new URL('../../..', import.meta.url));

const SOURCES = ['cli', 'exchange', 'orders', 'grammar', 'optics', 'tables', 'server', 'scripts', 'package.json'];

// Starting the command again and again takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** The built command. When `dist` is missing or older than a source, the command alone is bundled anew, elsewhere. */
export const command = await builtCommand();

async function builtCommand(): Promise<string> {
  const built = join(root, 'dist/lentil.mjs');
  const newest = Math.max(...SOURCES.map((source) => newestIn(join(root, source))));
  if (existsSync(built) && statSync(built).mtimeMs > newest) return built;
  const { bundles } = await import('../../../scripts/bundles.mjs');
  const bundle = bundles.find(({ name }: { name: string }) => name === 'command');
  const outdir = mkdtempSync(join(tmpdir(), 'lentil-command-'));
  afterAll(() => rmSync(outdir, { recursive: true, force: true }));
  await build({ ...(bundle as { options: object }).options, outdir });
  return join(outdir, 'lentil.mjs');
}

function newestIn(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => newestIn(join(path, name))));
}

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command to its end. Standard input is empty unless given, and nothing is a terminal. */
export function lentil(
  args: readonly string[],
  { cwd = root, input = '', env = {} }: { cwd?: string; input?: string | Buffer; env?: NodeJS.ProcessEnv } = {},
): Ran {
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [command, ...args], {
    cwd,
    input,
    env: { ...process.env, ...env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (error) throw error;
  return { status, stdout, stderr };
}
