import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { bundles } from './bundles.mjs';
import { writeDeclarations } from './declarations.mjs';
import { writeNotices } from './notices.mjs';
import { root } from './project.mjs';

/** Builds everything in `dist` anew. A part whose entry is missing fails the build, after the others are built. */
export async function bundleAll() {
  const dist = join(root, 'dist');
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(join(dist, 'lib'), { recursive: true });

  const present = bundles.filter(({ entries }) => entries.every((entry) => existsSync(join(root, entry))));
  const results = await Promise.all(present.map(({ options }) => build(options)));
  writeFileSync(join(dist, 'lib', 'package.json'), `${JSON.stringify({ type: 'module' }, null, 2)}\n`);
  makeExecutable(join(dist, 'lentil.mjs'));
  const packages = writeNotices(results.map(({ metafile }) => metafile));

  for (const { metafile } of results) {
    for (const [file, { bytes, entryPoint }] of Object.entries(metafile.outputs)) {
      if (entryPoint) console.log(`${file.padEnd(28)} ${(bytes / 1024).toFixed(0).padStart(6)} kB`);
    }
  }
  console.log(`with code of ${packages} packages, listed in dist/THIRD-PARTY-NOTICES.txt`);
  // Last, since these also check the types, and what is built by then can be tried all the same.
  if (present.some(({ name }) => name === 'library')) writeDeclarations();
  refuseMissing(present);
}

function makeExecutable(command) {
  if (!existsSync(command)) return;
  const text = readFileSync(command, 'utf8');
  if (!text.startsWith('#!')) writeFileSync(command, `#!/usr/bin/env node\n${text}`);
  chmodSync(command, statSync(command).mode | 0o111);
}

/** The web parts may be absent as long as the manifest does not promise them. */
function refuseMissing(present) {
  const { browser } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const missing = bundles.filter((bundle) => !present.includes(bundle) && (!bundle.optional || browser));
  if (missing.length === 0) return;
  throw new Error(`Not built: ${missing.map(({ name, entries }) => `${name} (no ${entries.join(', ')})`).join('; ')}`);
}
