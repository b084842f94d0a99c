/** The server publishes what the library finds, for every example file and every way its text may be stored. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Analysis, analyse, parseDocument, rangeIn } from '../../orders';
import { connect } from '../support/wire';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const names = readdirSync(examples).filter((name) => name.endsWith('.lentil'));
const bench = readFileSync(`${examples}/bench.lentil`, 'utf8');

const WAYS: readonly (readonly [string, (text: string) => string, number])[] = [
  ['as it is', (text) => text, 0],
  ['with CRLF', (text) => text.replaceAll('\n', '\r\n'), 0],
  ['with CR', (text) => text.replaceAll('\n', '\r'), 0],
  ['with a byte order mark', (text) => `\uFEFF${text}`, 1],
];

/** Code and place of every finding as the library tells them; an editor counts a byte order mark as a column. */
const found = ({ document, blocks }: Analysis, mark: number): string[] =>
  blocks.flatMap(({ findings }, index) =>
    findings.map((finding) => {
      const { start, end } = rangeIn(document, index, finding);
      const shift = start.line === 0 ? mark : 0;
      return `${finding.code} ${start.line}:${start.character + shift}-${end.character + shift}`;
    }),
  );

test.each(names.flatMap((name) => WAYS.map(([way, stored, mark]) => [name, way, stored, mark] as const)))(
  '%s %s',
  async (name, _, stored, mark) => {
    const text = stored(readFileSync(`${examples}/${name}`, 'utf8'));
    const isBench = name === 'bench.lentil';
    const expected = found(analyse(text, { shared: isBench ? [] : [parseDocument(bench)] }), mark);
    const files = new Map([['file:///examples/bench.lentil', bench]]);
    const wire = await connect({ files, configuration: () => ({ diagnostics: { most: 100_000 } }) });
    const uri = `file:///examples/${name}`;
    await wire.open(uri, text);
    await expect.poll(async () => (await wire.findings(uri)).diagnostics.length).toBe(expected.length);
    const published = (await wire.findings(uri)).diagnostics.map(
      ({ code, range: { start, end } }) => `${code} ${start.line}:${start.character}-${end.character}`,
    );
    expect(published.sort()).toEqual(expected.sort());
  },
);

test.each([
  [{ guard: 'accept-when-sure' as const }, { guard: 'accept-when-sure' }],
  [{ guard: 'reject-when-sure' as const }, { guard: 'reject-when-sure' }],
  [{ nearPercent: 40 }, { near: { percent: 40 } }],
  [{ standard: 'iso-21987-2017' }, { standard: 'iso-21987-2017' }],
])('the library with %j finds what the server finds with the same settings', async (options, settings) => {
  const plain = new Set<string>();
  const chosen = new Set<string>();
  for (const name of names.filter((one) => one !== 'bench.lentil')) {
    const text = readFileSync(`${examples}/${name}`, 'utf8').replace(/^standard .*$/m, '');
    const shared = [parseDocument(bench)];
    const expected = found(analyse(text, { ...options, shared }), 0).sort();
    const files = new Map([['file:///examples/bench.lentil', bench]]);
    const wire = await connect({ files, configuration: () => ({ ...settings, diagnostics: { most: 100_000 } }) });
    const uri = `file:///examples/${name}`;
    await wire.open(uri, text);
    const published = async () =>
      (await wire.findings(uri)).diagnostics.map(
        ({ code, range: { start, end } }) => `${code} ${start.line}:${start.character}-${end.character}`,
      );
    await expect.poll(async () => (await published()).sort()).toEqual(expected);
    for (const one of expected) chosen.add(`${name} ${one}`);
    for (const one of found(analyse(text, { shared }), 0)) plain.add(`${name} ${one}`);
  }
  if ('standard' in options) expect(chosen).not.toEqual(plain);
});
