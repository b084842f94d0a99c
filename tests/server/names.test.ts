/** Names across files: where they are described, where they are used, and what happens when one is changed. */
import { expect, test } from 'vitest';
import {
  DefinitionRequest,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DidDeleteFilesNotification,
  DidRenameFilesNotification,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  FileChangeType,
  type Location,
  LSPErrorCodes,
  type Position,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  type WorkspaceEdit,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import { covered } from '../features/support/sample';
import { connect, USUAL, type Wire, type WireOptions } from '../support/wire';

const FOLDER = 'file:///bench';
const BENCH = `${FOLDER}/bench.lentil`;
const OPEN = `${FOLDER}/week-48.lentil`;
const CLOSED = `${FOLDER}/days/monday.lentil`;
const OTHER = 'file:///elsewhere/bench.lentil';

const FILES = {
  [BENCH]: 'instrument FOC-A\n  reads-to 0.125\ntolerance house from z80.1-2015\n  power 0.06\n',
  [OPEN]:
    'standard house\norder QL-1042\n  R -1.00\n  reading 2026-11-24 with FOC-A\n    R -1.00\n    R -1.00 with FOC-A\n',
  [CLOSED]:
    'order QL-1043\n  remake-of QL-1042 "axis"\n  standard house\n  reading 2026-11-25 with FOC-A\n    R -1.00\n',
  [OTHER]: 'instrument FOC-A\n  reads-to 0.01\n',
};

interface Desk {
  readonly wire: Wire;
  readonly files: Map<string, string>;
}

async function desk(texts: Readonly<Record<string, string>> = FILES, options: WireOptions = {}): Promise<Desk> {
  const files = new Map(Object.entries(texts));
  const wire = await connect({ folders: [FOLDER], files, ...options });
  await wire.open(OPEN, texts[OPEN] ?? '');
  return { wire, files };
}

/** The place of the nth occurrence of some words in a text, one column into them. */
function placeOf(text: string, words: string, nth = 1): Position {
  let at = -1;
  for (let count = 0; count < nth; count++) at = text.indexOf(words, at + 1);
  const lines = text.slice(0, at + 1).split('\n');
  return { line: lines.length - 1, character: (lines.at(-1) as string).length };
}

const at = (words: string, nth = 1, text: string = FILES[OPEN]) => ({
  textDocument: { uri: OPEN },
  position: placeOf(text, words, nth),
});

/** Locations as `file:line words`, in their order. */
const shown = (files: Map<string, string>, found: readonly Location[] | null): string[] =>
  (found ?? [])
    .map(({ uri, range }) => {
      const name = uri.slice(FOLDER.length + 1);
      return `${name}:${range.start.line} ${covered(files.get(uri) ?? '', range)}`;
    })
    .sort();

const asLocations = (found: unknown): Location[] | null => found as Location[] | null;

test.each([
  ['an instrument', 'FOC-A', ['bench.lentil:0 FOC-A']],
  ['a tolerance', 'house', ['bench.lentil:2 house']],
  ['an order, at its own name', 'QL-1042', ['week-48.lentil:1 QL-1042']],
])('%s is found where it is described', async (_, words, expected) => {
  const { wire, files } = await desk();
  const found = await wire.client.sendRequest(DefinitionRequest.type, at(words));
  expect(shown(files, asLocations(found))).toEqual(expected);
});

test('an order that a remake repeats is found in another file, open or not', async () => {
  const { wire, files } = await desk();
  await wire.open(CLOSED, FILES[CLOSED]);
  const params = { textDocument: { uri: CLOSED }, position: placeOf(FILES[CLOSED], 'QL-1042') };
  const ask = async () => shown(files, asLocations(await wire.client.sendRequest(DefinitionRequest.type, params)));
  expect(await ask()).toEqual(['week-48.lentil:1 QL-1042']);
  await wire.close(OPEN);
  expect(await ask()).toEqual(['week-48.lentil:1 QL-1042']);
});

test('what the file itself describes comes before the bench file', async () => {
  const own = `instrument FOC-A\n  reads-to 0.25\n${FILES[OPEN]}`;
  const { wire, files } = await desk({ ...FILES, [OPEN]: own });
  const found = await wire.client.sendRequest(DefinitionRequest.type, at('FOC-A', 2, own));
  expect(shown(files, asLocations(found))).toEqual(['week-48.lentil:0 FOC-A']);
});

test('a published set, a word of the notation and a blank line are described nowhere', async () => {
  const text = 'standard z80.1-2015\n\norder A\n  supply glazed\n';
  const { wire } = await desk({ [OPEN]: text });
  for (const words of ['z80', '\n', 'glazed'])
    expect(await wire.client.sendRequest(DefinitionRequest.type, at(words, 1, text))).toBeNull();
});

test.each([
  ['FOC-A', ['bench.lentil:0 FOC-A', 'days/monday.lentil:3 FOC-A', 'week-48.lentil:3 FOC-A', 'week-48.lentil:5 FOC-A']],
  ['house', ['bench.lentil:2 house', 'days/monday.lentil:2 house', 'week-48.lentil:0 house']],
  ['QL-1042', ['days/monday.lentil:1 QL-1042', 'week-48.lentil:1 QL-1042']],
])('every place that speaks of %s is found, in open and closed files, and none of a namesake', async (words, all) => {
  const { wire, files } = await desk(FILES, { folders: [FOLDER, 'file:///elsewhere'] });
  const ask = async (includeDeclaration: boolean) =>
    shown(
      files,
      await wire.client.sendRequest(ReferencesRequest.type, { ...at(words), context: { includeDeclaration } }),
    );
  expect(await ask(true)).toEqual(all);
  expect((await ask(false)).length).toBe(all.length - 1);
});

test('the places of a name in one text are marked together', async () => {
  const { wire } = await desk();
  const marks = await wire.client.sendRequest(DocumentHighlightRequest.type, at('FOC-A'));
  expect(marks?.map(({ range, kind }) => [range.start.line, kind])).toEqual([
    [3, 2],
    [5, 2],
  ]);
});

/** The texts after an edit across files, with the version each edit was meant for. */
function applied(files: Map<string, string>, edit: WorkspaceEdit | null) {
  const changed = new Map<string, { readonly text: string; readonly version: number | null }>();
  for (const change of edit?.documentChanges ?? []) {
    if (!('textDocument' in change)) throw new Error('only edits were expected');
    const { uri, version } = change.textDocument;
    const lines = (files.get(uri) ?? '').split('\n');
    for (const { range, ...one } of change.edits.toReversed()) {
      const line = lines[range.start.line] ?? '';
      const text = 'newText' in one ? one.newText : '';
      lines[range.start.line] = line.slice(0, range.start.character) + text + line.slice(range.end.character);
    }
    changed.set(uri, { text: lines.join('\n'), version });
  }
  return changed;
}

test('an instrument gets another name in open and closed files, each edit with the version it is meant for', async () => {
  const { wire, files } = await desk();
  const edit = await wire.client.sendRequest(RenameRequest.type, { ...at('FOC-A'), newName: 'FOC-7' });
  const changed = applied(files, edit);
  expect([...changed.keys()].sort()).toEqual([BENCH, CLOSED, OPEN]);
  for (const [uri, { text, version }] of changed) {
    expect(text).toBe((files.get(uri) ?? '').replaceAll('FOC-A', 'FOC-7'));
    expect(version).toBe(uri === OPEN ? 1 : null);
  }
});

test.each([
  ['QL 1042', '"QL 1042"'],
  ['QL#7', '"QL#7"'],
  ['7" lens', '"7"" lens"'],
  ['  QL-9  ', 'QL-9'],
  ['by', 'by'],
])('an order called %j is written %s', async (newName, written) => {
  const { wire, files } = await desk();
  const edit = await wire.client.sendRequest(RenameRequest.type, { ...at('QL-1042'), newName });
  const changed = applied(files, edit);
  expect(changed.get(OPEN)?.text).toContain(`order ${written}\n`);
  expect(changed.get(CLOSED)?.text).toContain(`remake-of ${written} "axis"\n`);
});

test.each([
  ['QL-1042', '', 'A name needs at least one letter or figure.'],
  ['QL-1042', 'two\nlines', 'This cannot be written as one name on one line.'],
  ['QL-1042', 'QL-1043', 'There is an order “QL-1043” in monday.lentil already.'],
  ['FOC-A', 'FOC-B', 'There is an instrument “FOC-B” in bench.lentil already.'],
  ['house', 'z80.1-2010', '“z80.1-2010” is the name of a published set.'],
])('%s cannot be called %j', async (words, newName, message) => {
  const texts = { ...FILES, [BENCH]: `${FILES[BENCH]}instrument FOC-B\n` };
  const { wire } = await desk(texts);
  const answer = wire.client.sendRequest(RenameRequest.type, { ...at(words), newName });
  await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestFailed, message });
});

test('before renaming, the editor is told what stands there, or why it cannot be changed', async () => {
  const text = `${FILES[OPEN]}order B\n  standard z80.1-2015\n`;
  const { wire } = await desk({ ...FILES, [OPEN]: text });
  const ask = (words: string) => wire.client.sendRequest(PrepareRenameRequest.type, at(words, 1, text));
  expect(await ask('FOC-A')).toEqual({
    range: { start: { line: 3, character: 26 }, end: { line: 3, character: 31 } },
    placeholder: 'FOC-A',
  });
  await expect(ask('z80.1')).rejects.toMatchObject({ message: expect.stringContaining('is a published set') });
  await expect(ask('reading')).rejects.toMatchObject({ message: expect.stringContaining('Only the name of an order') });
});

test('an editor that knows no versions gets plain edits', async () => {
  const { wire } = await desk(FILES, { capabilities: { ...USUAL, workspace: { workspaceFolders: true } } });
  const edit = await wire.client.sendRequest(RenameRequest.type, { ...at('QL-1042'), newName: 'QL-1' });
  expect(Object.keys(edit?.changes ?? {}).sort()).toEqual([CLOSED, OPEN]);
});

test('a file that changed on disk without a word is read again before a name in it is changed', async () => {
  const { wire, files } = await desk();
  await wire.client.sendRequest(WorkspaceSymbolRequest.type, { query: '' });
  files.set(CLOSED, `# first\n${FILES[CLOSED]}`);
  const edit = await wire.client.sendRequest(RenameRequest.type, { ...at('FOC-A'), newName: 'FOC-7' });
  expect(applied(files, edit).get(CLOSED)?.text).toBe(`# first\n${FILES[CLOSED].replaceAll('FOC-A', 'FOC-7')}`);
});

const symbols = async (wire: Wire, query: string): Promise<string[]> =>
  ((await wire.client.sendRequest(WorkspaceSymbolRequest.type, { query })) ?? []).map(
    ({ name, containerName }) => `${name} ${containerName}`,
  );

test.each([
  ['', ['FOC-A bench.lentil', 'QL-1042 week-48.lentil', 'QL-1043 monday.lentil', 'house bench.lentil']],
  ['ql-1043', ['QL-1043 monday.lentil']],
  ['l43', ['QL-1043 monday.lentil']],
  ['104', ['QL-1042 week-48.lentil', 'QL-1043 monday.lentil']],
  ['zz', []],
])('the names of the workspace with %j in them', async (query, expected) => {
  const { wire } = await desk();
  expect(await symbols(wire, query)).toEqual(expected);
});

test('a list of names has an end', async () => {
  const many = Array.from({ length: 900 }, (_, index) => `order A${index}\n`).join('');
  const { wire } = await desk({ [OPEN]: many });
  expect(await symbols(wire, 'a')).toHaveLength(200);
  expect(await symbols(wire, 'A899')).toEqual(['A899 week-48.lentil']);
});

test('files and folders that come, change, move and go are followed', async () => {
  const { wire, files } = await desk();
  const tell = (uri: string, type: FileChangeType) =>
    wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
  expect(await symbols(wire, 'QL-1043')).toHaveLength(1);
  files.set(CLOSED, 'order QL-2000\n');
  await tell(CLOSED, FileChangeType.Changed);
  expect(await symbols(wire, 'QL')).toEqual(['QL-1042 week-48.lentil', 'QL-2000 monday.lentil']);
  files.delete(CLOSED);
  files.set(`${FOLDER}/week/monday.lentil`, 'order QL-2000\n');
  await wire.client.sendNotification(DidRenameFilesNotification.type, {
    files: [{ oldUri: `${FOLDER}/days`, newUri: `${FOLDER}/week` }],
  });
  expect(await symbols(wire, 'QL-20')).toEqual(['QL-2000 monday.lentil']);
  files.delete(`${FOLDER}/week/monday.lentil`);
  await wire.client.sendNotification(DidDeleteFilesNotification.type, { files: [{ uri: `${FOLDER}/week` }] });
  expect(await symbols(wire, 'QL')).toEqual(['QL-1042 week-48.lentil']);
});

test('the text in the editor wins over the one on disk until it is closed', async () => {
  const { wire, files } = await desk();
  await wire.change(OPEN, { text: 'order QL-3000\n' });
  await wire.client.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri: OPEN, type: FileChangeType.Changed }],
  });
  expect(await symbols(wire, 'QL')).toEqual(['QL-1043 monday.lentil', 'QL-3000 week-48.lentil']);
  await wire.close(OPEN);
  expect(await symbols(wire, 'QL-1042')).toEqual(['QL-1042 week-48.lentil']);
  files.delete(OPEN);
  await wire.client.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri: OPEN, type: FileChangeType.Deleted }],
  });
  expect(await symbols(wire, 'QL-1042')).toEqual([]);
});

test('a folder that joins the workspace is looked through, one that leaves is forgotten', async () => {
  const { wire } = await desk();
  const other = { uri: 'file:///elsewhere', name: '' };
  const event = (added: (typeof other)[], removed: (typeof other)[]) =>
    wire.client.sendNotification(DidChangeWorkspaceFoldersNotification.type, { event: { added, removed } });
  await event([other], []);
  expect(await symbols(wire, 'FOC')).toHaveLength(2);
  await event([], [other]);
  expect(await symbols(wire, 'FOC')).toHaveLength(1);
});

test('packages and folders of tools are passed over when they change', async () => {
  const { wire, files } = await desk();
  const uri = `${FOLDER}/node_modules/x/a.lentil`;
  files.set(uri, 'order QL-9999\n');
  await wire.client.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri, type: FileChangeType.Created }],
  });
  expect(await symbols(wire, 'QL-9999')).toEqual([]);
});

test('a file outside every folder knows the names of its bench file, and no others', async () => {
  const alone = 'file:///elsewhere/loose.lentil';
  const { wire, files } = await desk();
  const text = 'order L-1\n  reading 2026-11-24 with FOC-A\n    R -1.00\n';
  await wire.open(alone, text);
  const params = { textDocument: { uri: alone }, position: placeOf(text, 'FOC-A') };
  const found = await wire.client.sendRequest(DefinitionRequest.type, params);
  expect(asLocations(found)?.map(({ uri }) => uri)).toEqual([OTHER]);
  expect(files.has(OTHER)).toBe(true);
});

test('a bench file above the workspace that goes is forgotten with its names', async () => {
  const above = 'file:///desk/bench.lentil';
  const uri = 'file:///desk/ko/a.lentil';
  const files = new Map([[above, FILES[BENCH]]]);
  const wire = await connect({ files });
  const text = 'order A\n  reading 2026-11-24 with FOC-A\n    R -1.00\n';
  await wire.open(uri, text);
  const params = { textDocument: { uri }, position: placeOf(text, 'FOC-A') };
  expect(await wire.client.sendRequest(DefinitionRequest.type, params)).toHaveLength(1);
  files.clear();
  await wire.client.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri: above, type: FileChangeType.Changed }],
  });
  expect(await wire.client.sendRequest(DefinitionRequest.type, params)).toBeNull();
});

test('while files are still being read nothing waits but what needs them, and a renaming is put off', async () => {
  let isSlow = true;
  const slow = {
    get: (uri: string) => FILES[uri as keyof typeof FILES],
    keys: () => [CLOSED],
  } as unknown as Map<string, string>;
  const { wire } = await desk(FILES, {
    files: slow,
    read: async (uri) => {
      while (isSlow && uri === CLOSED) await new Promise((resolve) => setTimeout(resolve, 20));
      return slow.get(uri) ?? null;
    },
  });
  expect(await wire.codes(OPEN)).not.toContain('instrument-unknown');
  const params = { ...at('FOC-A'), newName: 'FOC-7' };
  await expect(wire.client.sendRequest(RenameRequest.type, params)).rejects.toMatchObject({
    message: expect.stringContaining('still being read'),
  });
  isSlow = false;
  const edit = await wire.client.sendRequest(RenameRequest.type, params);
  expect(edit?.documentChanges).toHaveLength(3);
});

test('files that only the editor can read are asked of it, when it has offered to answer', async () => {
  const inEditor = 'editor:/bench';
  const texts: Readonly<Record<string, string>> = {
    [`${inEditor}/bench.lentil`]: FILES[BENCH],
    [`${inEditor}/days/monday.lentil`]: FILES[CLOSED],
  };
  const asked: string[] = [];
  const answer = (wire: Wire) => {
    wire.client.onRequest('lentil/listFiles', ({ folder }: { folder: string }) => {
      asked.push(folder);
      return Object.keys(texts);
    });
    wire.client.onRequest('lentil/readFile', ({ uri }: { uri: string }) => texts[uri] ?? null);
  };
  const offered = await connect({ folders: [inEditor], initializationOptions: { files: true }, prepare: answer });
  await offered.open(`${inEditor}/days/tuesday.lentil`, FILES[OPEN]);
  expect(await offered.codes(`${inEditor}/days/tuesday.lentil`)).not.toContain('instrument-unknown');
  expect(await symbols(offered, 'QL-1043')).toEqual(['QL-1043 monday.lentil']);
  const silent = await connect({ folders: [inEditor], prepare: answer });
  expect(await symbols(silent, '')).toEqual([]);
  expect(asked).toEqual([inEditor]);
});

test('names that are described in another file lead to their place there, and no others lead anywhere', async () => {
  const remake = `${FILES[CLOSED]}instrument FOC-B\norder QL-1044\n  reading 2026-11-25 with FOC-B\n    R -1.00\n`;
  const uri = `${FOLDER}/remakes.lentil`;
  const { wire } = await desk();
  await wire.open(uri, remake);
  const links = (await wire.client.sendRequest(DocumentLinkRequest.type, { textDocument: { uri } })) ?? [];
  expect(links.map(({ range, target }) => [covered(remake, range), target])).toEqual([
    ['QL-1042', `${OPEN}#L2,7`],
    ['house', `${BENCH}#L3,11`],
    ['FOC-A', `${BENCH}#L1,12`],
  ]);
});
