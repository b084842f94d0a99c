/**
 * Outside judges of DICOM: `dciodvfy` of Debian's dicom3tools, which holds a file against the definition of its object, and
 * `dcm2json` of Debian's dcmtk, which gives a file back as DICOM JSON. Where they are not installed the tests that need
 * them say that they are skipped; in continuous integration they have to be there.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const isThere = (program: string): boolean => spawnSync(program, ['--version']).error === undefined;

const missing = ['dciodvfy', 'dcm2json'].filter((program) => !isThere(program));
if (missing.length > 0) {
  const told = `not installed: ${missing.join(' and ')} (Debian: dicom3tools, dcmtk)`;
  if (process.env.CI) throw new Error(told);
  console.info(`${told}; the tests of DICOM files that need them are skipped`);
}

export const areJudgesMissing = missing.length > 0;

function onFile(program: string, args: readonly string[], bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-dicom-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'measurement.dcm');
  writeFileSync(path, bytes);
  const { stdout, stderr } = spawnSync(program, [...args, path], { encoding: 'utf8', maxBuffer: 1 << 26 });
  return stdout + stderr;
}

/** What `dciodvfy` calls an error in a file. */
export const judged = (bytes: Uint8Array): readonly string[] =>
  onFile('dciodvfy', ['-new'], bytes)
    .split('\n')
    .filter((line) => line.startsWith('Error'));

/** Everything `dciodvfy` says, which names the object it has recognised. */
export const recognised = (bytes: Uint8Array): string => onFile('dciodvfy', ['-new'], bytes);

/**
 * The data set of a file as `dcm2json` reads it. It prints some numbers one unit of their last binary place off, so they
 * are taken to twelve figures, far finer than any lens.
 */
export const reproduced = (bytes: Uint8Array): Record<string, unknown> =>
  JSON.parse(onFile('dcm2json', [], bytes), (_, value) =>
    typeof value === 'number' ? Number(value.toPrecision(12)) : value,
  );
