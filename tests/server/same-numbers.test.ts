/** One order number with other powers in two files of the workspace is told at both, open or not. */
import { expect, test } from 'vitest';
import { DidChangeWatchedFilesNotification, FileChangeType } from 'vscode-languageserver/node';
import type { OrderList } from '../../server/features/order-list';
import { connect, type Wire } from '../support/wire';

const FOLDER = 'file:///bench';
const [A, B] = [`${FOLDER}/a.lentil`, `${FOLDER}/old/b.lentil`];
const order = (power: string, name = 'QL-1'): string =>
  `standard z80.1-2015\norder ${name}\n  R ${power}\n  make R\n  design single-vision\n  supply uncut\n  reading 2026-11-24\n    R ${power}\n    prism R 0\n`;

const told = async (wire: Wire, uri: string): Promise<readonly unknown[]> =>
  (await wire.findings(uri)).diagnostics.filter(({ code }) => code === 'order-elsewhere').map(({ message }) => message);
const changed = (wire: Wire, uri: string, type: FileChangeType = FileChangeType.Changed): Promise<void> =>
  wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
const rows = async (wire: Wire): Promise<readonly string[]> =>
  (await wire.client.sendRequest<OrderList>('lentil/orders', { verdict: 'accept' })).orders.map(
    ({ uri, words }) => `${uri.split('/').at(-1)} ${words.split(';')[0]}`,
  );

test('an open order is told of a closed file, again when that file changes, and no more when they agree', async () => {
  const files = new Map([[B, order('-3.00')]]);
  const wire = await connect({ folders: [FOLDER], files });
  await wire.open(A, order('-2.00'));
  await expect
    .poll(() => told(wire, A))
    .toEqual([
      'Order “QL-1” has other powers in old/b.lentil, line 2. Check which of the two is the order of this pair.',
    ]);
  files.set(B, `\n\n${order('-3.25')}`);
  await changed(wire, B);
  await expect.poll(async () => String(await told(wire, A))).toContain('old/b.lentil, line 4');
  files.set(B, order('-2.00'));
  await changed(wire, B);
  await expect.poll(() => told(wire, A)).toEqual([]);
});

test('two open files tell each other after an edit, and no longer when one is closed and gone', async () => {
  const files = new Map<string, string>();
  const wire = await connect({ folders: [FOLDER], files });
  await wire.open(A, order('-2.00'));
  await wire.open(B, order('-2.00'));
  await wire.findings(B);
  await wire.change(B, { text: order('-4.00') });
  await expect.poll(() => told(wire, A)).toHaveLength(1);
  await expect.poll(() => told(wire, B)).toHaveLength(1);
  await wire.change(B, { text: order('-4.00', 'QL-2') });
  await expect.poll(() => told(wire, A)).toEqual([]);
  await wire.change(B, { text: order('-4.00') });
  await expect.poll(() => told(wire, A)).toHaveLength(1);
  await wire.close(B);
  await expect.poll(() => told(wire, A)).toEqual([]);
});

test('files that are not open carry the reservation, and lose it with the other file', async () => {
  const files = new Map([
    [A, order('-2.00')],
    [B, order('-3.00')],
  ]);
  const wire = await connect({ folders: [FOLDER], files });
  await expect.poll(() => rows(wire)).toEqual(['a.lentil accept, order elsewhere', 'b.lentil accept, order elsewhere']);
  files.delete(B);
  await changed(wire, B, FileChangeType.Deleted);
  await expect.poll(() => rows(wire)).toEqual(['a.lentil accept']);
});

test('a copy, and a text that was never saved, are no fault', async () => {
  const wire = await connect({ folders: [FOLDER], files: new Map([[B, order('-2.00')]]) });
  await wire.open('untitled:Untitled-1', order('-9.00'));
  await wire.open(A, order('-2.00'));
  await new Promise((resolve) => setTimeout(resolve, 700));
  expect(await told(wire, A)).toEqual([]);
  expect(await told(wire, 'untitled:Untitled-1')).toEqual([]);
});
