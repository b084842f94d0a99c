import { expect, test } from 'vitest';
import { DiagnosticSeverity } from 'vscode-languageserver';
import { analyse, RULES } from '../../orders';
import { diagnostics } from '../../server/features/diagnostics';
import { covered, options, sample } from './support/sample';

/** Compares `code: covered text` of every finding with one of these codes, in the order of the text. */
function checkDiagnostics(text: string, expected: readonly string[], most?: number): void {
  const { snapshot } = sample(text);
  const found = diagnostics(snapshot.analysed(), options(most === undefined ? {} : { most }));
  const codes = new Set(expected.map((one) => one.split(':')[0]));
  const written = found.filter(({ code }) => code === undefined || codes.has(String(code)));
  expect(written.map(({ code, message, range }) => `${code ?? message}: ${covered(text, range)}`)).toEqual(expected);
}

test('a finding covers what it is about', () => {
  checkDiagnostics('order A\n  R 4.50 -0.75 x 022\n  L -4.50 -0.75 x 200\n', ['sign-missing: 4.50', 'axis-range: 200']);
});

test.each(['\n', '\r\n', '\r'])('columns are UTF-16 units, with line ends %j', (end) => {
  const lines = [
    'order "Zoë 👓"',
    '  note "👓👓" # 👓',
    '  L 4.50 # 👓',
    '  R -4.50',
    '  reading 2026-11-24 by "👓 Zoë" with FOC-B',
    '',
  ];
  checkDiagnostics(lines.join(end), ['sign-missing: 4.50', 'instrument-unknown: FOC-B']);
});

test('an editor that keeps the byte order mark counts it', () => {
  checkDiagnostics('\uFEFFstandard nowhere-9\norder A\n  R 4.50\n  L -4.50\n', [
    'standard-unknown: nowhere-9',
    'sign-missing: 4.50',
  ]);
});

test('separators of lines that are none do not move a place', () => {
  checkDiagnostics('order A\n  note a\u2028b\u0085c\u000Bd\n  R 4.50\n  L -4.50', ['sign-missing: 4.50']);
});

test('a finding tells its level, its code, its message and what it goes with', () => {
  const text = 'order A\n  R -4.50\n  L -4.50\n  R -4.75\n';
  const found = diagnostics(sample(text).snapshot.analysed(), options()).find(({ code }) => code === 'said-twice');
  expect(found).toMatchObject({ severity: DiagnosticSeverity.Error, code: 'said-twice', source: 'lentil' });
  const [related] = found?.relatedInformation ?? [];
  expect(related && covered(text, related.location.range)).toBe('-4.50');
  expect(related?.message).toBe('Said here first.');
});

test('an editor that shows no related places gets none', () => {
  const { abilities, ...rest } = options();
  const { snapshot } = sample('order A\n  R -4.50\n  L -4.50\n  R -4.75\n');
  const list = diagnostics(snapshot.analysed(), { abilities: { ...abilities, relatedInformation: false }, ...rest });
  expect(list.length).toBeGreaterThan(0);
  expect(list.filter(({ relatedInformation }) => relatedInformation)).toEqual([]);
});

/** Nine blocks with a typographic sign each, and an unknown line in every third one. */
const NINE = Array.from(
  { length: 9 },
  (_, at) => `instrument A${at}\n  zero −0.01\n  ${at % 3 === 0 ? 'foo' : 'note'} 1\n`,
).join('');

test('above the cap errors come first, and a note tells how many more there are', () => {
  const note = '8 more findings are not shown. Those shown are errors first, then the nearest to the last edit.: ';
  checkDiagnostics(
    NINE,
    ['typographic-sign: −0.01', 'unknown-line: foo', 'unknown-line: foo', 'unknown-line: foo', note],
    4,
  );
});

test('below the cap the nearest to the last edit are shown', () => {
  const { snapshot } = sample(NINE);
  const position = { line: 13, character: 0 };
  const document = snapshot.document.edit({ start: position, end: position }, ' ');
  const after = snapshot.after(document, 8, position.line).analysed();
  const lines = diagnostics(after, options({ most: 6 })).map(({ range }) => range.start.line);
  // The errors on lines 2, 11 and 20; then the hints of the edited block (line 13) and of those above and below it.
  expect(lines).toEqual([2, 10, 11, 13, 16, 20, 27]);
  const one = diagnostics(after, options({ most: 1 })).map(({ range }) => range.start.line);
  expect(one[0]).toBe(11);
});

test('within one block the nearest lines are shown', () => {
  const text = `instrument A\n${'  foo 1\n'.repeat(30)}`;
  const { snapshot } = sample(text);
  const position = { line: 20, character: 0 };
  const after = snapshot.after(snapshot.document.edit({ start: position, end: position }, ' '), 8, 20).analysed();
  const lines = diagnostics(after, options({ most: 3 })).map(({ range }) => range.start.line);
  expect(lines.slice(0, 3)).toEqual([19, 20, 21]);
});

test('a cause comes before the measures at its place, and the others hang under it', () => {
  const reading = '  R -3.00\n  L -2.00\n  pd 62\n  prism R 0 L 0\n';
  const text = `standard z80.1-2015\norder A\n  R -2.00\n  L -3.00\n  pd 62\n  design single-vision\n  supply glazed\n  reading 2026-11-24\n${reading}`;
  checkDiagnostics(text, ['eyes-swapped: -3.00', 'power-outside: -3.00', 'power-outside: -2.00']);
  const [cause] = diagnostics(sample(text).snapshot.analysed(), options()).filter(
    ({ code }) => code === 'eyes-swapped',
  );
  expect(cause?.severity).toBe(DiagnosticSeverity.Information);
  expect(cause?.relatedInformation?.map(({ message }) => message)).toEqual(['Explained by it.']);
});

test('every finding of the library is published, and no other, for the examples of all rules', () => {
  for (const { code, page } of RULES) {
    for (const example of [page.example.wrong, page.example.right]) {
      const text = `order A\n${example}\n  reading 2026-11-24\n${example}\n`;
      const { snapshot } = sample(text);
      const published = diagnostics(snapshot.analysed(), options({ most: 10_000 }));
      const known = analyse(text).blocks.flatMap(({ findings }) => findings.map((finding) => finding.code));
      expect(published.map((one) => one.code).sort(), `${code}: ${example}`).toEqual(known.sort());
    }
  }
});
