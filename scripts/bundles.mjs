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
  // The parser library asks for lodash; this does the same in less code and less time at every start.
  alias: { 'lodash-es': 'es-toolkit/compat' },
  logLevel: 'warning',
  metafile: true,
};

const forBrowser = { platform: 'browser', format: 'cjs', target: 'es2022', mainFields: ['browser', 'module', 'main'] };

/** The library by the names of its files in `dist/lib`. */
export const libraryEntries = { index: 'exchange/library.ts', optics: 'optics/index.ts' };

/** Everything that `dist` holds, as entry points and the options of the bundler. Names keep their letters, so that stacks can be read. */
export const bundles = [
  {
    name: 'command',
    entries: ['cli/main.ts', 'cli/checking/worker.ts'],
    options: {
      // The thread lies beside the parts, one of which starts it.
      entryPoints: { lentil: 'cli/main.ts', 'parts/check-thread': 'cli/checking/worker.ts' },
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
      // Nearly all of it is the language client, and whoever installs the extension downloads it.
      minifyIdentifiers: true,
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
    options: {
      ...forBrowser,
      entryPoints: { 'extension-web': 'client/web.ts' },
      outdir: 'dist',
      minifyIdentifiers: true,
      external: ['vscode'],
    },
  },
  {
    name: 'page of the sheet',
    entries: ['client/sheet/page.ts'],
    options: { ...forBrowser, format: 'iife', entryPoints: { 'sheet-page': 'client/sheet/page.ts' }, outdir: 'dist' },
  },
  {
    name: 'page of the report',
    entries: ['client/report/page.ts'],
    options: {
      ...forBrowser,
      format: 'iife',
      entryPoints: { 'report-page': 'client/report/page.ts' },
      outdir: 'dist',
    },
  },
  {
    name: 'web server',
    optional: true,
    entries: ['server/web.ts'],
    options: {
      ...forBrowser,
      format: 'iife',
      entryPoints: { 'server-web': 'server/web.ts' },
      outdir: 'dist',
      minifyIdentifiers: true,
    },
  },
  {
    name: 'library',
    entries: Object.values(libraryEntries),
    options: {
      entryPoints: libraryEntries,
      outdir: 'dist/lib',
      // The formulas are shared, so that an error of one is an instance of the other's class.
      splitting: true,
      chunkNames: 'parts/[name]-[hash]',
      platform: 'neutral',
      format: 'esm',
      target: 'es2022',
      mainFields: ['module', 'main'],
      conditions: ['import'],
    },
  },
].map((bundle) => ({ ...bundle, options: { ...common, ...bundle.options } }));
