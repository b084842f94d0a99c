/** What a file of very many orders must not do: hold up other questions, or send a list for a text that is gone. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test, vi } from 'vitest';
import { HoverRequest, InlayHintRequest } from 'vscode-languageserver/node';
import { connect } from '../support/wire';

vi.setConfig({ testTimeout: 60_000 });

const URI = 'file:///bench/year.lentil';
const ORDERS = 2_000;

/** 20,001 lines with a sign missing in every order. */
const TEXT = `standard z80.1-2015\n${Array.from({ length: ORDERS }, (_, index) =>
  [
    `order A${index}`,
    '  R -1.00',
    '  L 1.00',
    '  design single-vision',
    '  pd 64',
    '  lens resin-1.60',
    '  reading 2026-11-24',
    '    R -1.00',
    '    pd 64',
    '',
  ].join('\n'),
).join('\n')}\n`;

const at = (line: number, character: number) => ({ start: { line, character }, end: { line, character } });

test('while a large file is being opened other questions are answered, and findings are shown early', async () => {
  const wire = await connect();
  const opened = performance.now();
  await wire.open(URI, TEXT);
  const textDocument = { uri: URI };
  const hints = await wire.client.sendRequest(InlayHintRequest.type, { textDocument, range: at(0, 0) });
  expect(hints).toEqual([]);
  const early = await wire.findings(URI);
  const shown = performance.now() - opened;
  expect(early.diagnostics.length).toBeGreaterThan(0);
  const count = wire.published.length;
  expect(
    await wire.client.sendRequest(HoverRequest.type, { textDocument, position: { line: 15_002, character: 3 } }),
  ).not.toBeNull();
  await expect.poll(() => wire.published.length, { timeout: 50_000 }).toBeGreaterThan(count);
  const whole = performance.now() - opened;
  // The first list does not wait for the last order.
  expect(shown).toBeLessThan(whole / 2);
  expect(wire.published.at(-1)?.diagnostics).toHaveLength(401);
  expect(wire.published.at(-1)?.diagnostics.at(-1)?.message).toMatch(/^\d+ more findings are not shown/);
});

test('edits that come close together are published as one, and never for a version that is gone', async () => {
  const wire = await connect();
  await wire.open(URI, TEXT);
  await expect.poll(() => wire.published.at(-1)?.diagnostics.length, { timeout: 50_000 }).toBe(401);
  await wait(50);
  const before = wire.published.length;
  for (let count = 0; count < 30; count++) {
    await wire.change(URI, { range: at(9_003, 7), text: '1' });
  }
  expect((await wire.findings(URI)).version).toBe(31);
  const sent = wire.published.slice(before).map(({ version }) => version ?? 0);
  expect(sent.at(-1)).toBe(31);
  expect(sent.length).toBeLessThan(30);
  expect([...sent].sort((a, b) => a - b)).toEqual(sent);
  // The list is the one around the edit, and says that the sign is still missing there.
  const around = wire.published.at(-1)?.diagnostics.map(({ range }) => range.start.line) ?? [];
  expect(around).toContain(9_003);
  expect(around).not.toContain(3);
});
