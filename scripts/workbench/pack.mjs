import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createVSIX } from '@vscode/vsce';
import { root } from '../project.mjs';
import { vsix } from './places.mjs';

const packedFolders = ['dist', 'grammar', 'l10n', 'media', 'schema', 'snippets'];
const packedFiles = ['package.json', 'package.nls.json', 'package.nls.de.json', 'README.md', 'CHANGELOG.md', 'LICENSE'];

/** Builds and packs the extension into a file. Its dependencies are in the bundles already. */
export async function packExtension(file) {
  mkdirSync(dirname(file), { recursive: true });
  await createVSIX({
    cwd: root,
    packagePath: file,
    dependencies: false,
    allowMissingRepository: true,
    rewriteRelativeLinks: false,
  });
}

/** Packs the extension for the workbench, unless the packed one is newer than everything in it. */
export async function packForWorkbench() {
  if (timeOf(vsix) <= newest()) await packExtension(vsix);
}

function newest() {
  const inFolders = packedFolders.flatMap((folder) => filesBelow(join(root, folder)));
  const times = [...inFolders, ...packedFiles.map((file) => join(root, file))].map(timeOf);
  // Without a build there is nothing that a packed extension could be newer than.
  return timeOf(join(root, 'dist', 'extension.js')) === 0 ? Number.POSITIVE_INFINITY : Math.max(...times);
}

function filesBelow(folder) {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
  } catch {
    return [];
  }
}

const timeOf = (file) => statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
