/** The editor judges by the same files as the command, waits for them, and never judges by another one instead. */
import { describe, expect, test } from 'vitest';
import { DidChangeWatchedFilesNotification, FileChangeType } from 'vscode-languageserver/node';
import type { OrderList } from '../../server/features/order-list';
import { connect, type Wire, type WireOptions } from '../support/wire';

const FOLDER = 'file:///bench';
const URI = `${FOLDER}/days/a.lentil`;
const NEAR = `${FOLDER}/days/bench.lentil`;
const FAR = `${FOLDER}/bench.lentil`;
const SETTINGS = `${FOLDER}/lentil.config.json`;

/** A lens of -2.00 that reads -3.00 on an instrument whose zero is -1.00; off by 0.10 where an instrument is good to 0.06. */
const order = (figure: string): string =>
  `standard z80.1-2015\norder A\n  R -2.00\n  make R\n  design single-vision\n  supply uncut\n  reading 2026-11-24 with FOC-A\n    R ${figure}\n    prism R 0\n`;
const NEARLY = order('-2.10');
const ZEROED = 'instrument FOC-A\n  zero -1.00\n';
const PLAIN = 'instrument FOC-A\n  reads-to 0.01\n';

const words = async (wire: Wire, uri = URI): Promise<string> => {
  const status = await wire.client.sendRequest<{ readonly words: string } | null>('lentil/orderStatus', {
    textDocument: { uri },
    position: { line: 2, character: 0 },
  });
  return status?.words ?? '';
};
const changed = (wire: Wire, uri: string, type: FileChangeType = FileChangeType.Changed): Promise<void> =>
  wire.client.sendNotification(DidChangeWatchedFilesNotification.type, { changes: [{ uri, type }] });
const faults = (wire: Wire, uri = SETTINGS): readonly unknown[] | undefined =>
  wire.published.findLast((one) => one.uri === uri)?.diagnostics.map(({ message }) => message);

describe('the settings file', () => {
  const desk = (settings: string, more: WireOptions = {}) => {
    const files = new Map([
      [FAR, PLAIN],
      [SETTINGS, settings],
    ]);
    return connect({ folders: [FOLDER], files, ...more }).then((wire) => ({ wire, files }));
  };

  test('holds as it does for the command', async () => {
    // Off by 0.10 D, tolerance 0.13 D, good to 0.06 D by ISO 8598:1996: accepted as read, not when sure.
    const { wire } = await desk('{ "guard": "accept-when-sure" }');
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toMatch(/^reject/);
    const { wire: plain } = await desk('{}');
    await plain.open(URI, NEARLY);
    expect(await words(plain)).toMatch(/^accept/);
  });

  test('decides alone, before the settings of the editor', async () => {
    const configuration = () => ({ guard: 'accept-when-sure', standard: 'iso-21987-2017' });
    const { wire } = await desk('{ "near": 90 }', { configuration });
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toMatch(/^accept/);
    const { wire: without } = await desk('{}', { configuration, files: new Map([[FAR, PLAIN]]) });
    await without.open(URI, NEARLY);
    expect(await words(without)).toMatch(/^reject/);
  });

  test('above the workspace folder holds as well', async () => {
    const { wire } = await desk('{ "guard": "accept-when-sure" }', { folders: [`${FOLDER}/days`] });
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toMatch(/^reject/);
  });

  test('is read again when it changes, comes or goes', async () => {
    const { wire, files } = await desk('{}');
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toMatch(/^accept/);
    files.set(SETTINGS, '{ "guard": "accept-when-sure" }');
    await changed(wire, SETTINGS);
    await expect.poll(() => words(wire)).toMatch(/^reject/);
    files.delete(SETTINGS);
    await changed(wire, SETTINGS, FileChangeType.Deleted);
    await expect.poll(() => words(wire)).toMatch(/^accept/);
  });

  test('that cannot be used is told at its place and at the order, and nothing is judged until it is mended', async () => {
    const { wire, files } = await desk('{\n  "guard": "sometimes"\n}\n');
    await wire.open(URI, NEARLY);
    expect(await wire.codes(URI)).toContain('input-missing');
    expect(await words(wire)).toMatch(/^incomplete: input missing/);
    const told = wire.published.findLast(({ uri }) => uri === SETTINGS)?.diagnostics[0];
    expect(told?.message).toContain('guard has to be one of simple, accept-when-sure, reject-when-sure');
    expect(told?.range).toEqual({ start: { line: 1, character: 2 }, end: { line: 1, character: 9 } });
    files.set(SETTINGS, '{ "guard": "simple" }');
    await changed(wire, SETTINGS);
    await expect.poll(() => words(wire)).toMatch(/^accept/);
    expect(faults(wire)).toEqual([]);
  });

  test('its mark goes with the last file that rests on it', async () => {
    const { wire } = await desk('{');
    await wire.open(URI, NEARLY);
    await wire.findings(URI);
    expect(faults(wire)).toHaveLength(1);
    await wire.close(URI);
    await expect.poll(() => faults(wire)).toEqual([]);
  });

  test('holds for files that are not open', async () => {
    const list = async (settings: string): Promise<OrderList['counts']> => {
      const { wire, files } = await desk(settings);
      files.set(URI, NEARLY);
      await changed(wire, URI, FileChangeType.Created);
      return (await wire.client.sendRequest<OrderList>('lentil/orders', {})).counts;
    };
    expect(await list('{}')).toMatchObject({ accept: 1 });
    expect(await list('{ "guard": "accept-when-sure" }')).toMatchObject({ reject: 1 });
    expect(await list('{ "guard": 1 }')).toMatchObject({ incomplete: 1 });
  });
});

describe('a slow disk', () => {
  /** Reads as soon as it is let, file by file. */
  function slow(texts: Readonly<Record<string, string>>, held: readonly string[]) {
    const files = new Map(Object.entries(texts));
    const letGo = new Map<string, () => void>();
    const waits = new Map(held.map((uri) => [uri, new Promise<void>((resolve) => letGo.set(uri, resolve))]));
    const read = async (uri: string): Promise<string | null> => {
      await waits.get(uri);
      return files.get(uri) ?? null;
    };
    return { files, read, come: (uri: string) => letGo.get(uri)?.() };
  }

  // As read -2.00 is accepted; less the zero of -1.00 the lens has -1.00 and is out of tolerance.
  test('never leads to a verdict by a bench file farther up, and the order is judged when the nearer one has come', async () => {
    const { files, read, come } = slow({ [NEAR]: ZEROED, [FAR]: PLAIN }, [NEAR]);
    const wire = await connect({ folders: [FOLDER], files, read });
    await wire.open(URI, order('-2.00'));
    expect(await wire.codes(URI)).toContain('input-missing');
    expect(await wire.codes(URI)).not.toContain('instrument-unknown');
    expect(await words(wire)).toBe('incomplete: input missing');
    come(NEAR);
    await expect.poll(() => words(wire)).toMatch(/^reject: R power/);
    await expect.poll(() => wire.codes(URI)).not.toContain('input-missing');
    const told = wire.published
      .filter(({ uri }) => uri === URI)
      .map(({ diagnostics }) => diagnostics.map(({ code }) => code));
    expect(told.every((codes) => codes.includes('input-missing') || codes.includes('power-outside'))).toBe(true);
  });

  test('a folder without a bench file is known to have none before the one above it counts', async () => {
    const { files, read, come } = slow({ [FAR]: PLAIN }, [NEAR]);
    const wire = await connect({ folders: [FOLDER], files, read });
    await wire.open(URI, order('-2.00'));
    expect(await words(wire)).toBe('incomplete: input missing');
    come(NEAR);
    await expect.poll(() => words(wire)).toMatch(/^accept/);
  });

  test('settings that come late are waited for in the same way', async () => {
    const texts = { [FAR]: PLAIN, [SETTINGS]: '{ "guard": "accept-when-sure" }' };
    const { files, read, come } = slow(texts, [SETTINGS]);
    const wire = await connect({ folders: [FOLDER], files, read });
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toBe('incomplete: input missing');
    come(SETTINGS);
    await expect.poll(() => words(wire)).toMatch(/^reject/);
  });

  test('and so are those of an editor that tells them late', async () => {
    let tell: (settings: unknown) => void = () => undefined;
    const configuration = () => new Promise((resolve) => (tell = resolve));
    const wire = await connect({ folders: [FOLDER], files: new Map([[FAR, PLAIN]]), configuration });
    await wire.open(URI, NEARLY);
    expect(await words(wire)).toBe('incomplete: input missing');
    tell({ guard: 'accept-when-sure' });
    await expect.poll(() => words(wire)).toMatch(/^reject/);
  });

  test('files that are not open are not judged by another bench file either', async () => {
    const { files, read, come } = slow({ [NEAR]: ZEROED, [FAR]: PLAIN, [URI]: order('-2.00') }, [NEAR]);
    const wire = await connect({ folders: [FOLDER], files, read });
    await changed(wire, URI, FileChangeType.Created);
    const counts = async () => (await wire.client.sendRequest<OrderList>('lentil/orders', {})).counts;
    expect(await counts()).toMatchObject({ accept: 0, reject: 0, incomplete: 1 });
    come(NEAR);
    await expect.poll(counts).toMatchObject({ accept: 0, reject: 1, incomplete: 0 });
  });
});

test('a bench file that is there and cannot be read is not taken for one that is absent', async () => {
  const read = async (uri: string) => (uri === NEAR ? { error: 'it is not UTF-8 text' } : uri === FAR ? PLAIN : null);
  const wire = await connect({ folders: [FOLDER], read });
  await wire.open(URI, order('-2.00'));
  expect(await words(wire)).toBe('incomplete: input missing');
  const told = (await wire.findings(URI)).diagnostics.find(({ code }) => code === 'input-missing');
  expect(told?.message).toBe(
    '“bench.lentil” cannot be used: it is not UTF-8 text. Nothing is judged until it is corrected.',
  );
});
