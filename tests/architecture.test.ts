import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { basename, dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const git = (...args: readonly string[]) =>
  execFileSync('git', args, { cwd: root, encoding: 'utf8' }).split('\0').filter(Boolean);

/** Tracked files and those about to be, without the ones that are deleted but not yet committed. */
const files = git('ls-files', '-z', '--cached', '--others', '--exclude-standard').filter((file) =>
  existsSync(join(root, file)),
);
const text = (file: string) => readFileSync(join(root, file), 'utf8');
const sources = files.filter((file) => /\.(?:m?ts|mjs)$/.test(file));

interface Room {
  /** Rooms that it may import from. */
  readonly rooms: readonly string[];
  readonly packages: readonly string[];
  /** Files that may touch the platform, apart from which the room runs anywhere. */
  readonly platform?: RegExp;
}

const ROOMS: Readonly<Record<string, Room>> = {
  optics: { rooms: [], packages: [] },
  tables: { rooms: [], packages: [] },
  grammar: { rooms: [], packages: ['chevrotain', 'fastest-levenshtein'] },
  orders: { rooms: ['grammar', 'optics', 'tables'], packages: [] },
  // Of `sarif` there are only types.
  exchange: {
    rooms: ['orders'],
    packages: ['csv-parse', 'csv-stringify', 'd3-array', 'lossless-json', 'sarif', 'simple-statistics', 'uuid'],
  },
  // Of `exchange` it shows the report alone.
  server: {
    rooms: ['exchange', 'orders', 'grammar'],
    packages: ['vscode-languageserver'],
    platform: /^server\/(?:node|web)\.ts$/,
  },
  cli: {
    rooms: ['exchange', 'orders', 'grammar', 'server'],
    packages: ['commander', 'tinyglobby'],
    platform: /^cli\//,
  },
  client: { rooms: [], packages: ['vscode', 'vscode-languageclient'], platform: /^client\/(?:desktop|web)\.ts$/ },
};

interface Import {
  readonly file: string;
  readonly specifier: string;
  readonly lazy: boolean;
}

/** The import and export statements of a file as the compiler reads them, and its `import(…)` calls. */
function importsOf(file: string): readonly Import[] {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    const isStatement = ts.isImportDeclaration(node) || ts.isExportDeclaration(node);
    const isCall = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
    const isType = ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined;
    const target = isStatement ? node.moduleSpecifier : isCall ? node.arguments[0] : isType;
    if (target && ts.isStringLiteralLike(target)) found.push({ file, specifier: target.text, lazy: isCall });
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text(file), ts.ScriptTarget.Latest));
  return found;
}

const roomOf = (file: string) => file.split('/')[0] ?? '';
const packageOf = (specifier: string) => specifier.match(/^(?:@[^/]+\/)?[^/]+/)?.[0] ?? specifier;
const isPlatform = (specifier: string) => specifier.startsWith('node:') || builtinModules.includes(specifier);
/** `vscode-languageserver/node` belongs to the platform, `vscode-languageserver` does not. */
const isPlatformPart = (specifier: string) => /^vscode-language(?:server|client)\/(?:node|browser)$/.test(specifier);

/** Rooms that are only loaded when somebody asks for what they do. */
const isLazy = (from: string, to: string): boolean =>
  (from === 'cli' && to === 'server') || (from === 'server' && to === 'exchange');

/** What is wrong with an import, or undefined. */
function objection({ file, specifier, lazy }: Import, room: Room): string | undefined {
  if (specifier.startsWith('.')) {
    const target = posix.join(dirname(file), specifier);
    const other = roomOf(target);
    if (target.startsWith('..')) return 'leaves the project';
    if (/\.(?:m?ts|m?js)$/.test(specifier)) return 'has a file extension';
    if (roomOf(file) === 'server' && other === 'exchange' && !target.startsWith('exchange/report/'))
      return 'may use nothing of exchange but the report';
    if (other === roomOf(file) || target === 'package.json' || room.rooms.includes(other))
      return !lazy && isLazy(roomOf(file), other) ? `loads the ${other} room before it is asked for` : undefined;
    return `may not use ${other}`;
  }
  const onPlatform = room.platform?.test(file) ?? false;
  if (isPlatform(specifier) || isPlatformPart(specifier)) return onPlatform ? undefined : 'touches the platform';
  return room.packages.includes(packageOf(specifier)) ? undefined : `may not use the package ${packageOf(specifier)}`;
}

describe.each(Object.entries(ROOMS))('%s', (name, room) => {
  const inRoom = sources.filter((file) => roomOf(file) === name);

  test('imports only what its room may use', () => {
    const objections = inRoom
      .flatMap(importsOf)
      .map((found) => ({ ...found, why: objection(found, room) }))
      .filter(({ why }) => why)
      .map(({ file, specifier, why }) => `${file}: '${specifier}' ${why}`);
    expect(objections).toEqual([]);
  });
});

test('the check of imports sees what it is there for', () => {
  const seen = (file: string, specifier: string, lazy = false) =>
    objection({ file, specifier, lazy }, ROOMS[roomOf(file)] ?? { rooms: [], packages: [] });
  expect(seen('optics/power.ts', '../tables/materials')).toBe('may not use tables');
  expect(seen('orders/index.ts', 'chevrotain')).toBe('may not use the package chevrotain');
  expect(seen('orders/index.ts', 'node:fs')).toBe('touches the platform');
  expect(seen('server/session.ts', 'vscode-languageserver/node')).toBe('touches the platform');
  expect(seen('cli/main.ts', '../server/node')).toBe('loads the server room before it is asked for');
  expect(seen('server/guard.ts', '../exchange/report/summary')).toBe('loads the exchange room before it is asked for');
  expect(seen('server/guard.ts', '../exchange/report/summary', true)).toBeUndefined();
  expect(seen('server/guard.ts', '../exchange/fhir/to-fhir', true)).toBe('may use nothing of exchange but the report');
  expect(seen('cli/main.ts', '../server/node', true)).toBeUndefined();
  expect(seen('orders/rules/order/eye-missing.ts', '../../../grammar')).toBeUndefined();
});

test('no file exports a default, apart from the configuration that needs one', () => {
  const rooms = sources.filter((file) => roomOf(file) in ROOMS);
  expect(rooms.filter((file) => /^export default\b/m.test(text(file)))).toEqual([]);
});

test('file names are in lower case with hyphens', () => {
  // A dot may stand in a name, as in the edition of a standard.
  const odd = sources.filter((file) => !/^[a-z0-9]+(?:[-.][a-z0-9]+)*$/.test(basename(file)));
  expect(odd).toEqual([]);
});

describe('what no file may hold', () => {
  // The patterns are put together here, so that this file does not hold them itself.
  const forbidden: readonly (readonly [what: string, pattern: RegExp])[] = [
    [
      'the address of a package registry',
      new RegExp(
        ['registry\\.[a-z]+', 'npmjs', 'yarnpkg', 'deb\\.debian'].map((host) => `${host}\\.[a-z]`).join('|'),
        'i',
      ),
    ],
    ['a path of one machine', new RegExp(`(?<![\\w.])/(?:${['work', 'root', 'home', 'Users'].join('|')})/(?!<)\\w`)],
    ['a private key', new RegExp(`-----${'BEGIN'} [A-Z ]*PRIVATE KEY-----`)],
  ];
  const readable = files.filter(
    (file) => !/\.(?:png|ico|wasm|gif)$/.test(file) && file !== 'tests/architecture.test.ts',
  );

  test.each(forbidden)('%s', (_, pattern) => {
    const hits = readable.flatMap((file) => {
      const hit = text(file).match(pattern);
      return hit ? [`${file}: ${hit[0]}`] : [];
    });
    expect(hits).toEqual([]);
  });
});

test('the size of files is told', () => {
  const own = sources.filter((file) => roomOf(file) in ROOMS);
  const sizes = own
    .map((file) => ({ file, lines: text(file).split('\n').length }))
    .sort((one, other) => one.lines - other.lines);
  const at = (share: number) => sizes[Math.min(sizes.length - 1, Math.floor(sizes.length * share))]?.lines ?? 0;
  const long = sizes.filter(({ lines }) => lines > 300).map(({ file, lines }) => `${file} (${lines})`);
  console.info(
    `${sizes.length} files; median ${at(0.5)} lines, nine in ten below ${at(0.9)}. Over 300: ${long.join(', ') || 'none'}`,
  );
  expect(sizes.length).toBeGreaterThan(0);
});
