import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './project.mjs';
import { npm } from './run.mjs';

/** Installs the locked packages when what lies in node_modules is not what the lock file asks for. */
export async function installWhatIsMissing() {
  if (isInstalled()) return;
  console.log('Installing the packages of package-lock.json …');
  await npm(['ci', '--no-fund', '--no-audit', '--loglevel=error']);
}

/**
 * npm writes a lock file of its own into node_modules when it has finished. Comparing the two notices a changed lock
 * file and a broken-off installation alike, and leaves a good installation alone.
 */
function isInstalled() {
  const wanted = packagesOf(join(root, 'package-lock.json'));
  const present = packagesOf(join(root, 'node_modules', '.package-lock.json'));
  if (!wanted) throw new Error('package-lock.json is missing or unreadable');
  if (!present) return false;
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === '') return true;
    const found = present[path];
    return found ? found.version === version : optional === true;
  });
}

function packagesOf(lockFile) {
  try {
    return JSON.parse(readFileSync(lockFile, 'utf8')).packages;
  } catch {
    return undefined;
  }
}
