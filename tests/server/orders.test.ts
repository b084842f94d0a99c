import { expect, test } from 'vitest';
import { DidChangeWatchedFilesNotification, FileChangeType } from 'vscode-languageserver/node';
import type { OrderList } from '../../server/features/order-list';
import { connect, type Wire } from '../support/wire';

const FOLDER = 'file:///bench';
const RIGHT =
  'standard z80.1-2015\norder A\n  R -2.00\n  make R\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';
const WRONG = RIGHT.replace('    R -2.00', '    R -2.50').replace('order A', 'order B');

const list = (wire: Wire, verdict?: string): Promise<OrderList> =>
  wire.client.sendRequest('lentil/orders', { verdict });
const saved = (wire: Wire, uri: string, type: FileChangeType = FileChangeType.Changed): Promise<void> =>
  wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });

function workspace(entries: Readonly<Record<string, string>>) {
  const files = new Map(Object.entries(entries).map(([name, text]) => [`${FOLDER}/${name}`, text]));
  let reads = 0;
  const read = async (uri: string) => {
    reads++;
    return files.get(uri) ?? null;
  };
  return { files, read, reads: () => reads };
}

test('orders of closed files are judged, counted by verdict and listed on demand', async () => {
  const { files, read } = workspace({
    'a.lentil': RIGHT,
    'b.lentil': `# Two lines above.\n\n${WRONG}`,
    'c.lentil': 'order C\n',
  });
  const wire = await connect({ folders: [FOLDER], files, read });
  expect((await list(wire)).counts).toEqual({ accept: 1, reject: 1, incomplete: 0, unread: 1 });
  expect((await list(wire)).orders).toEqual([]);
  const { orders, more } = await list(wire, 'reject');
  expect(orders).toMatchObject([{ name: 'B', verdict: 'reject', uri: `${FOLDER}/b.lentil`, line: 3 }]);
  expect(orders[0]?.words).toContain('reject: R power');
  expect(more).toBe(0);
});

test('the text in the editor wins over the one on disk, and comes back when it is closed', async () => {
  const { files, read } = workspace({ 'a.lentil': RIGHT });
  const wire = await connect({ folders: [FOLDER], files, read });
  await wire.open(`${FOLDER}/a.lentil`, WRONG);
  expect((await list(wire)).counts).toMatchObject({ accept: 0, reject: 1 });
  await wire.close(`${FOLDER}/a.lentil`);
  expect((await list(wire)).counts).toMatchObject({ accept: 1, reject: 0 });
});

test('a closed file is read and judged again only when it or its bench file has changed', async () => {
  const house = 'tolerance T from z80.1-2015\n  power 1.00\n';
  const { files, read, reads } = workspace({ 'bench.lentil': house, 'b.lentil': WRONG });
  const wire = await connect({ folders: [FOLDER], files, read });
  await list(wire);
  const before = reads();
  await list(wire);
  expect(reads()).toBe(before);

  files.set(`${FOLDER}/b.lentil`, RIGHT);
  await saved(wire, `${FOLDER}/b.lentil`);
  expect((await list(wire)).counts).toMatchObject({ accept: 1, reject: 0 });

  files.delete(`${FOLDER}/b.lentil`);
  await saved(wire, `${FOLDER}/b.lentil`, FileChangeType.Deleted);
  expect((await list(wire)).counts).toMatchObject({ accept: 0, reject: 0 });
});

test('the settings of a folder hold for its closed files', async () => {
  const { files, read } = workspace({ 'a.lentil': RIGHT.replace('standard z80.1-2015\n', '') });
  const configuration = () => ({ standard: 'z80.1-2015' });
  const wire = await connect({ folders: [FOLDER], files, read, configuration });
  expect((await list(wire)).counts).toMatchObject({ accept: 1, incomplete: 0 });
});

test('a tolerance of the bench file above counts for as long as it is there', async () => {
  const text = RIGHT.replace('standard z80.1-2015', 'standard House');
  const bench = 'tolerance House from z80.1-2015\n  power 0.12\n';
  const { files, read } = workspace({ 'bench.lentil': bench, 'week/a.lentil': text });
  const wire = await connect({ folders: [FOLDER], files, read });
  expect((await list(wire)).counts).toMatchObject({ accept: 1, incomplete: 0 });
  files.delete(`${FOLDER}/bench.lentil`);
  await saved(wire, `${FOLDER}/bench.lentil`, FileChangeType.Deleted);
  expect((await list(wire)).counts).toMatchObject({ accept: 0, incomplete: 1 });
});
