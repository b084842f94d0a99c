import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import { build } from 'esbuild';
import ts from 'typescript';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';

// The package is tried as its users get it: packed, unpacked into an empty project, with nothing else installed.
const root = fileURLToPath(new URL('..', import.meta.url));
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
// Packing, installing and compiling take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let project: string;
let installed: string;

beforeAll(() => {
  if (!existsSync(join(root, 'dist/lib/index.js'))) throw new Error('there is no build to pack; run npm run build');
  project = mkdtempSync(join(tmpdir(), 'lentil-user-'));
  const packed = npm('pack', '--ignore-scripts', '--silent', '--pack-destination', project).trim();
  writeFileSync(join(project, 'package.json'), '{ "private": true, "type": "module" }');
  execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', '--silent', join(project, packed)], {
    cwd: project,
  });
  installed = join(project, 'node_modules', 'lentil');
});

afterAll(() => rmSync(project, { recursive: true, force: true }));

/** Bytes of the package as it is fetched, and as it lies installed. */
function sizes(): { readonly packed: number; readonly unpacked: number } {
  const archive = readdirSync(project).find((file) => file.endsWith('.tgz')) as string;
  const files = readdirSync(installed, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const unpacked = files.reduce((sum, one) => sum + statSync(join(one.parentPath, one.name)).size, 0);
  return { packed: statSync(join(project, archive)).size, unpacked };
}

const npm = (...args: readonly string[]) => execFileSync('npm', args, { cwd: root, encoding: 'utf8' });

const run = (program: string, ...args: readonly string[]) =>
  execFileSync(program, args, { cwd: project, encoding: 'utf8' });

const use = `import { evaluate, parse, format } from 'lentil';
import { transpose } from 'lentil/optics';
const text: string = 'order QL-1042\\n  R -4.50 -0.75 x 022\\n';
const other = transpose({ sphere: -4.5, cylinder: -0.75, axis: 22 });
console.log(typeof evaluate(text), typeof parse(text), typeof format(text), other.sphere);
`;

test('everything the manifest names is in the package', () => {
  const { main, bin, exports, contributes } = manifest;
  const parts = [exports['.'], exports['./optics']];
  const named = [main, bin.lentil, ...parts.flatMap((part) => [part.types, part.default])];
  const shown = [contributes.grammars[0].path, contributes.languages[0].configuration];
  const notices = ['LICENSE', 'CHANGELOG.md', 'README.md', 'dist/THIRD-PARTY-NOTICES.txt'];
  expect([...named, ...shown, ...notices].filter((file) => !existsSync(join(installed, file)))).toEqual([]);
});

test('an error of the formulas is of one class in both parts of the library', () => {
  writeFileSync(
    join(project, 'errors.mjs'),
    `import * as optics from 'lentil/optics';
import * as library from 'lentil';
const names = Object.keys(optics).filter((name) => name in library);
console.log(names.length > 0 && names.every((name) => optics[name] === library[name]));`,
  );
  expect(run(process.execPath, 'errors.mjs').trim()).toBe('true');
});

test('nothing else needs to be installed, and the size is told', () => {
  const kilobytes = (bytes: number): string => `${Math.round(bytes / 1024)} kB`;
  const { packed, unpacked } = sizes();
  console.log(`packed ${kilobytes(packed)}, installed ${kilobytes(unpacked)}, no dependencies`);
  expect(manifest.dependencies).toBeUndefined();
  expect(Object.keys(JSON.parse(run('npm', 'ls', '--json', '--all')).dependencies)).toEqual(['lentil']);
});

test('the command runs by its name', () => {
  expect(run('npx', '--no-install', 'lentil', '--version').trim()).toBe(manifest.version);
});

test('the library is imported by its name', () => {
  writeFileSync(join(project, 'use.mjs'), use.replace(': string', ''));
  expect(run(process.execPath, 'use.mjs').trim()).toBe('object object string -5.25');
});

test.each([
  ['Node', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['a bundler', ts.ModuleKind.Preserve, ts.ModuleResolutionKind.Bundler],
])('the types are found by %s, without the types of Node or a browser', (_, module, moduleResolution) => {
  const file = join(project, 'use.ts');
  writeFileSync(file, use.replace(/console\.log\((.*)\);/, 'export const kinds = [$1];'));
  const program = ts.createProgram([file], {
    module,
    moduleResolution,
    strict: true,
    noEmit: true,
    types: [],
    lib: ['lib.es2022.d.ts'],
  });
  const problems = ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
  expect(problems).toEqual([]);
});

test('the library runs where there is neither Node nor a browser around it', async () => {
  const { outputFiles } = await build({
    stdin: { contents: use.replace(': string', ''), resolveDir: project },
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    logLevel: 'silent',
  });
  const said: string[] = [];
  // A bare context has the language and nothing of its host: no process, no require, no window.
  runInNewContext(outputFiles[0]?.text ?? '', { console: { log: (...kinds: string[]) => said.push(kinds.join(' ')) } });
  expect(said).toEqual(['object object string -5.25']);
});

test('the notices name every package whose code is inside', () => {
  const notices = readFileSync(join(installed, 'dist/THIRD-PARTY-NOTICES.txt'), 'utf8');
  for (const name of ['chevrotain', 'commander', 'vscode-languageserver', 'vscode-languageclient']) {
    expect(notices).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+\\nLicence: \\S+`, 'm'));
  }
});
