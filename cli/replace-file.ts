import { randomUUID } from 'node:crypto';
import { renameSync, rmSync, statSync, writeFileSync } from 'node:fs';

/** Writes beside the file and then takes its place, so that whatever stops the command leaves no half-written file. */
export function replaceFile(path: string, text: string): void {
  const beside = `${path}.${randomUUID()}.tmp`;
  try {
    const mode = statSync(path, { throwIfNoEntry: false })?.mode;
    writeFileSync(beside, text, mode === undefined ? {} : { mode });
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}
