import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateDtsBundle } from 'dts-bundle-generator';
import { libraryFace } from './bundles.mjs';
import { root } from './project.mjs';

/** Writes the library's types into one file, which may name no other package: its users have none of them installed. */
export function writeDeclarations() {
  const face = join(root, 'dist', 'library.ts');
  writeFileSync(face, libraryFace().replaceAll("'./", "'../"));
  try {
    const [types] = generateDtsBundle(
      [{ filePath: face, output: { noBanner: true, sortNodes: false, exportReferencedTypes: true } }],
      { preferredConfigPath: join(root, 'tsconfig.lib.json') },
    );
    const foreign = types.match(/^(?:import|export) .*from ['"].*|import\(['"].*?['"]\)|\/\/\/ <reference.*/m);
    if (foreign) throw new Error(`The library's types depend on something outside: ${foreign[0]}`);
    mkdirSync(join(root, 'dist', 'lib'), { recursive: true });
    writeFileSync(join(root, 'dist', 'lib', 'index.d.ts'), types);
  } finally {
    rmSync(face);
  }
}
