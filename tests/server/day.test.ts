/** The server holds dates against the day of the clock, also over midnight; here the environment says which day it is. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { OrderList } from '../../server/features/order-list';
import { connect, type Wire } from '../support/wire';

const FOLDER = 'file:///bench';
const TEXT =
  'standard z80.1-2015\norder A\n  R -2.00\n  make R\n  supply uncut\n  reading 2026-11-24\n    R -2.00\n    prism R 0\n';

const counts = async (wire: Wire) => {
  const list: OrderList = await wire.client.sendRequest('lentil/orders', {});
  return list.counts;
};

const before = process.env.LENTIL_TODAY;
beforeEach(() => {
  process.env.LENTIL_TODAY = '2026-11-23';
});
afterEach(() => {
  process.env.LENTIL_TODAY = before;
});

test('a closed file is judged again on another day', async () => {
  const wire = await connect({ folders: [FOLDER], files: new Map([[`${FOLDER}/a.lentil`, TEXT]]) });
  expect(await counts(wire)).toMatchObject({ accept: 0, incomplete: 1 });
  process.env.LENTIL_TODAY = '2026-11-24';
  expect(await counts(wire)).toMatchObject({ accept: 1, incomplete: 0 });
});

test('a file that is open over midnight is judged again with the next edit', async () => {
  const wire = await connect({ folders: [FOLDER] });
  const uri = `${FOLDER}/a.lentil`;
  await wire.open(uri, TEXT);
  expect(await counts(wire)).toMatchObject({ accept: 0, incomplete: 1 });
  process.env.LENTIL_TODAY = '2026-11-24';
  await wire.change(uri, { text: `${TEXT}# Past midnight.\n` });
  expect(await counts(wire)).toMatchObject({ accept: 1, incomplete: 0 });
});
