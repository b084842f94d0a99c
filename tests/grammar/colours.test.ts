import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { colours } from '../../grammar/colours';
import { VOCABULARY } from '../../grammar/vocabulary';

// The colours are checked with the engine that the editor itself uses.
let grammar: textmate.IGrammar;

beforeAll(async () => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await oniguruma.loadWASM(wasm);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(JSON.stringify(colours()), 'lentil.json'),
  });
  const loaded = await registry.loadGrammar('source.lentil');
  if (!loaded) throw new Error('the grammar does not load');
  grammar = loaded;
});

/** Every coloured piece of a line with the last part of its scope, blanks left out. */
function coloured(line: string): readonly (readonly [text: string, scope: string])[] {
  return grammar
    .tokenizeLine(line, textmate.INITIAL)
    .tokens.map(
      ({ startIndex, endIndex, scopes }) => [line.slice(startIndex, endIndex).trim(), scopes.at(-1) ?? ''] as const,
    )
    .filter(([text]) => text !== '')
    .map(([text, scope]) => [text, scope.replace(/\.lentil$/, '')] as const);
}

const checkColours = (line: string, ...expected: readonly (readonly [text: string, scope: string])[]) =>
  expect(coloured(line)).toEqual(expected);

const line = 'keyword.other.line';
const clause = 'keyword.other.clause';
const block = 'keyword.control.block';
const eye = 'variable.language.eye';
const figure = 'constant.numeric';
const axis = 'constant.numeric.axis';
const cross = 'keyword.operator.axis';
const reference = 'entity.name.type';

test('the file that editors load is the one made from the vocabulary', async () => {
  const text = `${JSON.stringify(colours(), null, 2)}\n`;
  await expect(text).toMatchFileSnapshot('../../grammar/lentil.tmLanguage.json');
});

test('every word that can open a line is coloured there', () => {
  const heads = VOCABULARY.filter(({ role }) => role === 'line' || role === 'block' || role === 'eye');
  const plain = heads
    .flatMap(({ word, also }) => [word, ...also])
    .filter((word) => !/keyword|eye/.test(coloured(word)[0]?.[1] ?? ''));
  expect(plain).toEqual([]);
});

test('every other word is coloured inside a line', () => {
  const words = VOCABULARY.filter(({ role }) => role !== 'block').flatMap(({ word, also }) => [word, ...also]);
  const plain = words.filter((word) => {
    const scope = coloured(`pd 63 ${word} 1`).find(([text]) => text === word)?.[1] ?? 'nothing';
    return scope === 'variable.other' || scope === 'nothing';
  });
  expect(plain).toEqual([]);
});

test('a power takes the colours of its parts, spaced and close', () => {
  const parts = [
    [figure, '-4.50'],
    [figure, '-0.75'],
    [cross, 'x'],
    [axis, '022'],
  ].map(([scope, text]) => [text, scope] as [string, string]);
  checkColours('  R  -4.50 -0.75 x 022', ['R', eye], ...parts);
  checkColours('R-4.50-0.75x022', ['R', eye], ...parts);
  checkColours(
    '  L −4.50 –0.75 × 022 # tray 7',
    ['L', eye],
    ['−4.50', figure],
    ['–0.75', figure],
    ['×', cross],
    ['022', axis],
    ['# tray 7', 'comment.line.number-sign'],
  );
});

test('a heading colours its name, whatever the name is', () => {
  checkColours('order QL-1042', ['order', block], ['QL-1042', 'entity.name.function']);
  checkColours('ORDER order', ['ORDER', block], ['order', 'entity.name.function']);
  checkColours('instrument "FOC A"', ['instrument', block], ['"FOC A"', reference]);
  checkColours('standard z80.1-2015', ['standard', line], ['z80.1-2015', reference]);
  checkColours(
    'tolerance house from z80.1-2015',
    ['tolerance', block],
    ['house', reference],
    ['from', clause],
    ['z80.1-2015', reference],
  );
});

test('the head of a reading', () => {
  checkColours(
    '  reading 2026-11-24 14:30 by KO with FOC-A stage final',
    ['reading', block],
    ['2026-11-24', 'constant.numeric.date'],
    ['14:30', 'constant.numeric.time'],
    ['by', clause],
    ['KO', 'variable.other.person'],
    ['with', clause],
    ['FOC-A', reference],
    ['stage', clause],
    ['final', 'constant.language.place'],
  );
});

test('a number sign is a comment only after a blank and outside quotes', () => {
  checkColours('ref "tray #7"', ['ref', line], ['"tray #7"', 'string.quoted.double']);
  checkColours(
    'note tray#7 # seen',
    ['note', line],
    ['tray#7', 'string.unquoted'],
    ['# seen', 'comment.line.number-sign'],
  );
  checkColours('# order QL-1042', ['# order QL-1042', 'comment.line.number-sign']);
});

test('longer words win over the words in them', () => {
  checkColours('base-curve 4.00', ['base-curve', line], ['4.00', figure]);
  checkColours('near-pd 60', ['near-pd', line], ['60', figure]);
  checkColours('ordering 3', ['ordering', 'variable.other'], ['3', figure]);
  checkColours(
    'design bifocal flat-top 28',
    ['design', line],
    ['bifocal', 'support.type.design'],
    ['flat-top', 'support.type.design'],
    ['28', figure],
  );
});

test('two drum positions and two meridians', () => {
  checkColours(
    'add R -4.50 -> -2.50',
    ['add', line],
    ['R', eye],
    ['-4.50', figure],
    ['->', 'keyword.operator.arrow'],
    ['-2.50', figure],
  );
  checkColours(
    'L -4.50 @ 022 / -5.25 @ 112',
    ['L', eye],
    ['-4.50', figure],
    ['@', 'keyword.operator.meridian'],
    ['022', axis],
    ['/', 'keyword.operator'],
    ['-5.25', figure],
    ['@', 'keyword.operator.meridian'],
    ['112', axis],
  );
});

test('a material is a name, but an eye before it is not', () => {
  checkColours('lens resin-1.50', ['lens', line], ['resin-1.50', 'support.type.material']);
  expect(coloured('lens R resin-1.50')[1]).toEqual(['R', eye]);
});
