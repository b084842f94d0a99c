import { randomUUID } from 'node:crypto';
import { renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { setImmediate as turn } from 'node:timers/promises';

/** Statuses of a command that was stopped, as a shell gives them: 128 and the number of the signal. */
const STOPPED = { SIGINT: 130, SIGTERM: 143 } as const;

const stop = (signal: keyof typeof STOPPED): void => process.exit(STOPPED[signal]);

/**
 * Writes beside the file and then takes its place, so that whatever stops the command leaves no half-written file. Ctrl-C
 * is heeded when that is done, since it would leave the file beside.
 */
export async function replaceFile(path: string, text: string): Promise<void> {
  const beside = `${path}.${randomUUID()}.tmp`;
  process.on('SIGINT', stop).on('SIGTERM', stop);
  try {
    const mode = statSync(path, { throwIfNoEntry: false })?.mode;
    writeFileSync(beside, text, mode === undefined ? {} : { mode });
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  } finally {
    // A signal that has come in is only told at the next turn.
    await turn();
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}
