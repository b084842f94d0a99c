import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createVSIX } from '@vscode/vsce';
import { transform } from 'esbuild';
import { bundleAll } from '../bundle.mjs';
import { root } from '../project.mjs';
import { staged, vsix } from './places.mjs';

const packedFolders = ['dist', 'grammar', 'l10n', 'media', 'schema', 'snippets'];
const packedFiles = ['package.json', 'package.nls.json', 'package.nls.de.json', 'README.md', 'CHANGELOG.md', 'LICENSE'];

/**
 * Builds and packs the extension into a file. Its dependencies are in the bundles already. It is packed from a copy of
 * what an editor needs: the library and the command’s other uses are for programs, which get them from the npm package.
 */
export async function packExtension(file) {
  await bundleAll();
  mkdirSync(dirname(file), { recursive: true });
  await stage();
  await createVSIX({
    cwd: staged,
    packagePath: file,
    dependencies: false,
    allowMissingRepository: true,
    rewriteRelativeLinks: false,
  });
}

/** What the packed extension leaves out. */
const leftOut = [join(root, 'dist', 'lib')];

async function stage() {
  rmSync(staged, { recursive: true, force: true });
  mkdirSync(staged, { recursive: true });
  for (const name of [...packedFolders, ...packedFiles]) {
    cpSync(join(root, name), join(staged, name), { recursive: true, filter: (path) => !leftOut.includes(path) });
  }
  leaveOutOtherUses(join(staged, 'dist'));
  await shortenNames(join(staged, 'dist'));
  // Pictures would make the file half as large again; a page that has an address can show them from there.
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  writeFileSync(join(staged, 'README.md'), readme.replace(/^!\[.*\]\(docs\/.*\)\n\n?/gm, ''));
  const { scripts, devDependencies, exports, allowScripts, ...manifest } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  writeFileSync(join(staged, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
}

/** Uses of the command that no editor has: other formats are for programs. */
const otherUse = /^(?:import|export)-/;

/** Takes out what the command loads for those uses alone; the parts name one another in their texts. */
function leaveOutOtherUses(folder) {
  const parts = join(folder, 'parts');
  const texts = new Map(readdirSync(parts).map((name) => [name, readFileSync(join(parts, name), 'utf8')]));
  const namedIn = (text) => [...texts.keys()].filter((name) => text.includes(name) && !otherUse.test(name));
  const used = new Set(namedIn(readFileSync(join(folder, 'lentil.mjs'), 'utf8')));
  for (const name of used) for (const other of namedIn(texts.get(name))) used.add(other);
  for (const name of texts.keys()) if (!used.has(name)) rmSync(join(parts, name));
}

/** The command keeps its names for readable stacks where it is installed for itself; here it is only the server. */
async function shortenNames(folder) {
  const modules = filesBelow(folder).filter((file) => file.endsWith('.mjs'));
  for (const file of modules) {
    const { code } = await transform(readFileSync(file, 'utf8'), { minify: true, format: 'esm', charset: 'utf8' });
    writeFileSync(file, code);
  }
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
