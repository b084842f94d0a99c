import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './project.mjs';

/**
 * Packages in the CommonJS form call `require` for Node's own modules, which an ES module does not have unless it
 * makes one.
 */
const requireForCommonJs =
  "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

const common = {
  bundle: true,
  sourcemap: false,
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  charset: 'utf8',
  absWorkingDir: root,
  logLevel: 'warning',
  metafile: true,
};

const forBrowser = { platform: 'browser', format: 'cjs', target: 'es2022', mainFields: ['browser', 'module', 'main'] };

/** Everything that `dist` holds, as entry points and the options of the bundler. Names keep their letters, so that stacks can be read. */
export const bundles = [
  {
    name: 'command',
    entries: ['cli/main.ts'],
    options: {
      entryPoints: { lentil: 'cli/main.ts' },
      outdir: 'dist',
      outExtension: { '.js': '.mjs' },
      chunkNames: 'parts/[name]-[hash]',
      splitting: true,
      platform: 'node',
      format: 'esm',
      target: 'node20',
      mainFields: ['module', 'main'],
      banner: { js: requireForCommonJs },
    },
  },
  {
    name: 'desktop extension',
    entries: ['client/desktop.ts'],
    options: {
      entryPoints: { extension: 'client/desktop.ts' },
      outdir: 'dist',
      platform: 'node',
      format: 'cjs',
      target: 'node20',
      external: ['vscode'],
    },
  },
  {
    name: 'web extension',
    optional: true,
    entries: ['client/web.ts'],
    options: { ...forBrowser, entryPoints: { 'extension-web': 'client/web.ts' }, outdir: 'dist', external: ['vscode'] },
  },
  {
    name: 'web server',
    optional: true,
    entries: ['server/web.ts'],
    options: { ...forBrowser, format: 'iife', entryPoints: { 'server-web': 'server/web.ts' }, outdir: 'dist' },
  },
  {
    name: 'library',
    entries: ['orders/index.ts'],
    options: {
      stdin: { contents: libraryFace(), resolveDir: root, sourcefile: 'library.ts', loader: 'ts' },
      outfile: 'dist/lib/index.js',
      platform: 'neutral',
      format: 'esm',
      target: 'es2022',
      mainFields: ['module', 'main'],
      conditions: ['import'],
    },
  },
].map((bundle) => ({ ...bundle, options: { ...common, ...bundle.options } }));

/** The library is the face of the orders together with the conversions, which may not import each other both ways. */
export function libraryFace() {
  return ['orders/index', 'exchange/index']
    .filter((module) => existsSync(join(root, `${module}.ts`)))
    .map((module) => `export * from './${module}';\n`)
    .join('');
}
