import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateDtsBundle } from 'dts-bundle-generator';
import { libraryEntries } from './bundles.mjs';
import { root } from './project.mjs';

/** Writes the types of each part of the library into one file, which may name no other package: its users have none of them installed. */
export function writeDeclarations() {
  const output = { noBanner: true, sortNodes: false, exportReferencedTypes: true };
  const entries = Object.values(libraryEntries).map((entry) => ({ filePath: join(root, entry), output }));
  const all = generateDtsBundle(entries, { preferredConfigPath: join(root, 'tsconfig.lib.json') });
  mkdirSync(join(root, 'dist', 'lib'), { recursive: true });
  for (const [at, name] of Object.keys(libraryEntries).entries()) {
    // What is private is nobody's business, and its mark is refused by compilers that are set to an old language.
    const types = all[at].replace(/^\s*#private;\n/gm, '');
    const foreign = types.match(/^(?:import|export) .*from ['"].*|import\(['"].*?['"]\)|\/\/\/ <reference.*/m);
    if (foreign) throw new Error(`The library's types depend on something outside: ${foreign[0]}`);
    writeFileSync(join(root, 'dist', 'lib', `${name}.d.ts`), types);
  }
}
