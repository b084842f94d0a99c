import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The first of these programs that is on the path, or undefined. */
export function findProgram(...names) {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(isExecutable);
}

export const findBrowser = () =>
  process.env.LENTIL_BROWSER ?? findProgram('chromium', 'chromium-browser', 'google-chrome');

/** What the tests in the real editor need beside the packages, and this machine does not have. */
export function missingForWorkbench() {
  const missing = missingForEditor();
  if (!findBrowser()) missing.unshift('chromium');
  return missing;
}

/** What the editor needs to be set up and served; any browser can open it then. */
export function missingForEditor() {
  if (process.platform === 'win32') return ['a Unix-like system'];
  return [
    ['ripgrep', ['rg']],
    ['python3', ['python3']],
    ['make', ['make']],
    ['g++', ['g++', 'c++']],
  ].flatMap(([name, programs]) => (findProgram(...programs) ? [] : [name]));
}

function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
