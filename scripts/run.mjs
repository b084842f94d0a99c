import { spawn } from 'node:child_process';
import { root } from './project.mjs';

/**
 * Runs a program in the project's folder with its output passed through, and resolves with its exit status.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<number>}
 */
export function run(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd: root, stdio: 'inherit', ...options });
    child.on('error', reject);
    child.on('close', (status, signal) => resolve(status ?? (signal ? 128 : 1)));
  });
}

/** As `run`, but any status other than 0 is an error. */
export async function mustRun(program, args, options = {}) {
  const status = await run(program, args, options);
  if (status !== 0) throw new Error(`${[program, ...args].join(' ')} ended with status ${status}`);
}

/** Runs npm through the shell on Windows, where it is a command file. */
export const npm = (args, options = {}) => mustRun('npm', args, { shell: process.platform === 'win32', ...options });

/** Runs a script with the Node that runs this one. */
export const node = (args, options = {}) => run(process.execPath, args, options);

/** Ends the process with one readable line instead of a stack when a step has failed. */
export function fail(error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(1);
}
