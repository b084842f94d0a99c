import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { command, lentil } from './support/command';

const folder = dirname(command);

/** A file of the bundle and everything that is loaded with it; what is imported later, when asked for, is not. */
function loadedWith(file: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const text = readFileSync(file, 'utf8');
  for (const [, found] of text.matchAll(/\b(?:from|import)\s*"(\.[^"]+)"/g))
    loadedWith(join(dirname(file), found ?? ''), seen);
  return seen;
}

const part = (name: string): string => {
  const file = readdirSync(join(folder, 'parts')).find((one) => new RegExp(`^${name}-[A-Z0-9]+\\.mjs$`).test(one));
  if (!file) throw new Error(`the bundle has no part ${name}`);
  return join(folder, 'parts', file);
};

const holds = (files: ReadonlySet<string>, text: string): readonly string[] =>
  [...files].filter((file) => readFileSync(file, 'utf8').includes(text)).map((file) => basename(file));

/** A method of the protocol that only the server speaks. */
const SERVER = 'textDocument/publishDiagnostics';
/** A source that only the library cites. */
const LIBRARY = 'z80.1-2015-reference-guide';

test('checking a file loads the library and not the server', () => {
  const files = new Set([...loadedWith(command), ...loadedWith(part('check'))]);
  expect(holds(files, LIBRARY)).not.toEqual([]);
  expect(holds(files, SERVER)).toEqual([]);
});

test('the entry loads neither until a command is chosen', () => {
  expect(holds(loadedWith(command), SERVER)).toEqual([]);
  expect(holds(loadedWith(command), LIBRARY)).toEqual([]);
});

test('the server is there when it is asked for', () => {
  expect(
    holds(new Set(readdirSync(join(folder, 'parts')).map((name) => join(folder, 'parts', name))), SERVER),
  ).not.toEqual([]);
});

test('the server says nothing of its own accord, and ends with its input', () => {
  const { stdout, stderr, status } = lentil(['serve', '--stdio']);
  expect(stdout).toBe('');
  expect(stderr).toBe('');
  expect(status).not.toBeNull();
});
