import { expect, test } from 'vitest';
import { VOCABULARY } from '../../grammar';
import { LEGEND, semanticTokens, semanticTokensInRange } from '../../server/features/semantic-tokens';
import { BIFOCAL, sample, WHOLE } from './support/sample';

/** Takes the numbers apart as an editor does, into pieces of the text with their type. */
function decoded(text: string, data: readonly number[]): string[] {
  const lines = text.split(/\r\n|\r|\n/);
  let [line, character] = [0, 0];
  const pieces: string[] = [];
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, right = 0, length = 0, type = 0, modifiers = 0] = data.slice(at, at + 5);
    line += down;
    character = down > 0 ? right : character + right;
    const declared = modifiers === 1 ? '!' : '';
    pieces.push(`${lines[line]?.slice(character, character + length)}:${LEGEND.tokenTypes[type]}${declared}`);
  }
  return pieces;
}

const about = { textDocument: { uri: '' } };

function checkTokens(text: string, expected: string): void {
  const tokens = semanticTokens(sample(text).snapshot, about);
  expect(decoded(text, tokens?.data ?? []).join(' ')).toBe(expected);
}

test.each([
  ['order QL-1042  # by phone', 'order:keyword QL-1042:function! # by phone:comment'],
  ['instrument FOC-A', 'instrument:keyword FOC-A:type!'],
  ['tolerance house from z80.1-2015', 'tolerance:keyword house:type! from:property z80.1-2015:type'],
  ['standard z80.1-2015', 'standard:keyword z80.1-2015:type'],
  [
    '  reading 2026-11-24 14:30 by KO with FOC-A stage edged',
    'reading:keyword 2026-11-24:number 14:30:number by:property KO:parameter with:property FOC-A:type stage:property edged:enumMember',
  ],
  [
    '  OD -4.50 -0.75 x 022 add +2.00',
    'OD:variable -4.50:number -0.75:number x:operator 022:number add:property +2.00:number',
  ],
  [
    '  L lines -4.25 / -5.25 x 168',
    'L:variable lines:property -4.25:number /:operator -5.25:number x:operator 168:number',
  ],
  ['  again R -4.50', 'again:keyword R:variable -4.50:number'],
  [
    '  add R -4.50 -> -2.50 front-vertex',
    'add:keyword R:variable -4.50:number ->:operator -2.50:number front-vertex:property',
  ],
  ['  prism R 2.00 BI 0.50 BU', 'prism:keyword R:variable 2.00:number BI:enumMember 0.50:number BU:enumMember'],
  ['  design bifocal flat-top 28', 'design:keyword bifocal:enumMember flat-top:enumMember 28:number'],
  ['  lens resin-1.50', 'lens:keyword resin-1.50:type'],
  ['  frame A 52 B 36', 'frame:keyword A:property 52:number B:property 36:number'],
  ['  supply glazed', 'supply:keyword glazed:enumMember'],
  ['  note "order of R"', 'note:keyword "order of R":string'],
  ['  remake-of QL-1 "axis"', 'remake-of:keyword QL-1:function "axis":string'],
  [
    '  confirmed axis-short "R" "told" by KO',
    'confirmed:keyword axis-short:enumMember "R":string "told":string by:property KO:parameter',
  ],
  ['foo bar 3', ''],
])('%s', (line, expected) => checkTokens(line, expected));

test('a range gives the tokens of its lines and no others', () => {
  const { snapshot } = sample(BIFOCAL);
  const range = { start: { line: 6, character: 5 }, end: { line: 7, character: 0 } };
  const { data } = semanticTokensInRange(snapshot, { ...about, range });
  expect(decoded(BIFOCAL, data).map((piece) => piece.split(':')[0])).toEqual([
    'R',
    '-4.50',
    '-0.75',
    'x',
    '022',
    'L',
    '-4.25',
    '-1.00',
    'x',
    '168',
  ]);
});

test('a very large file gives them by ranges only', () => {
  const { snapshot } = sample('order A\n  R -1.00\n'.repeat(10_001));
  expect(semanticTokens(snapshot, about)).toBeNull();
  const range = { start: { line: 19_000, character: 0 }, end: { line: 19_001, character: 0 } };
  expect(semanticTokensInRange(snapshot, { ...about, range }).data).toHaveLength(4 * 5);
  const { data } = semanticTokensInRange(snapshot, { ...about, range: WHOLE });
  // Two tokens on each line, up to the most that is looked at.
  expect(data.length).toBeLessThanOrEqual(20_001 * 2 * 5);
});

test('every word that can open a line has a colour there', () => {
  for (const { word, role } of VOCABULARY) {
    if (role !== 'line' && role !== 'block' && role !== 'eye') continue;
    const block = VOCABULARY.find((one) => one.word === word)?.blocks.includes('tolerance') ? 'tolerance t\n' : '';
    const text = `${block}  ${word} 1`;
    const pieces = decoded(text, semanticTokens(sample(text).snapshot, about)?.data ?? []);
    expect(pieces.some((piece) => piece === `${word}:keyword` || piece === `${word}:variable`)).toBe(true);
  }
});

test('a byte order mark is counted as the editor counts it', () => {
  const [, character] = semanticTokens(sample('\uFEFForder A').snapshot, about)?.data ?? [];
  expect(character).toBe(1);
});
