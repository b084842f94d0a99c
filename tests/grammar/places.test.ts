import { describe, expect, test } from 'vitest';
import { type LentilDocument, parseDocument, parseLine, splitLines } from '../../grammar';
import { BENCH } from '../support/lines';
import { mark, unmark } from '../support/marks';

/** A text in which several lines are told something. */
const TOLD = BENCH.replace('-4.50 -0.75 x 022', '4.50 -0.75 x 22')
  .replace('pd          63 near 60', 'pd          63,60')
  .replace('height   R 17', 'height   R -17')
  .replace('supply      glazed', 'suply       glazed');

/** Everything a text says, by line and column. */
function findings(document: LentilDocument) {
  const places: string[] = [];
  let number = 0;
  for (const { kind, lines } of document.blocks) {
    for (const line of lines) {
      for (const { code, start, end } of line.parsed(kind).problems) places.push(`${number}:${start}-${end} ${code}`);
      number++;
    }
  }
  return places;
}

const blocksOf = ({ blocks }: LentilDocument) =>
  blocks.map(({ kind, lines }) => ({
    kind,
    lines: lines.map((line) => ({ text: line.text, node: line.parsed(kind).node })),
  }));

describe('line ends', () => {
  const plain = parseDocument(TOLD);

  test('the sample is told of in four lines', () => {
    expect(findings(plain).map((one) => one.split(' ')[1])).toEqual([
      'sign-missing',
      'axis-short',
      'pair-unclear',
      'unknown-line',
      'length-negative',
    ]);
  });

  test.each([
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('%s change no block and no place', (_, end) => {
    const document = parseDocument(TOLD.replaceAll('\n', end));
    expect(blocksOf(document)).toEqual(blocksOf(plain));
    expect(findings(document)).toEqual(findings(plain));
    expect(document.text()).toBe(TOLD.replaceAll('\n', end));
  });

  test('of all kinds in one text change no block and no place', () => {
    // Without blank lines, since a CR and the LF of a blank line would be one end.
    const dense = TOLD.replaceAll('\n\n', '\n');
    const ends = ['\n', '\r\n', '\r'];
    let at = 0;
    const document = parseDocument(dense.replaceAll('\n', () => ends[at++ % ends.length] as string));
    expect(blocksOf(document)).toEqual(blocksOf(parseDocument(dense)));
    expect(findings(document)).toEqual(findings(parseDocument(dense)));
  });

  test('a byte order mark is kept and never counted', () => {
    const document = parseDocument(`\uFEFF${TOLD}`);
    expect(document.byteOrderMark).toBe(true);
    expect(blocksOf(document)).toEqual(blocksOf(plain));
    expect(findings(document)).toEqual(findings(plain));
    expect(document.text()).toBe(`\uFEFF${TOLD}`);
  });

  test('a byte order mark anywhere else is an ordinary character', () => {
    const document = parseDocument(`order A\n\uFEFFR -4.50`);
    expect(document.byteOrderMark).toBe(false);
    expect(document.line(1)?.text).toBe('\uFEFFR -4.50');
  });

  // The other line ends of Unicode: its standard annex 14, classes BK and NL.
  test.each(['\u2028', '\u2029', '\u0085', '\v', '\f'])('%j is none', (character) => {
    expect(splitLines(`note a${character}note b\nnote c`).map(({ text }) => text)).toEqual([
      `note a${character}note b`,
      'note c',
    ]);
  });

  test.each([
    ['', ['']],
    ['\n', ['\n', '']],
    ['\r\n', ['\r\n', '']],
    ['\r\r\n\n', ['\r', '\r\n', '\n', '']],
    ['\n\r', ['\n', '\r', '']],
    ['a\r', ['a\r', '']],
    ['a\nb', ['a\n', 'b']],
  ])('%j has its lines', (text, lines) => {
    expect(splitLines(text).map((line) => line.text + line.end)).toEqual(lines);
  });
});

// Columns are UTF-16 code units: the language-server protocol 3.17, “Position”.
describe('what stands before a value does not shift its place', () => {
  test.each([
    'order 🔍🔍 ‹extra›',
    'reading 2026-11-24 by 👩🏽‍🔬 ‹zip›',
    'reading 2026-11-24 by Zoë ‹zip›',
    'reading 2026-11-24 by Zoe\u0308 ‹zip›',
    'lens ältest-1.50 index ‹1,60›',
    'confirmed axis-short "🔍 R -4.50" "größer" by KO ‹zip›',
    'remake-of 𝟙𝟚 ‹"open›',
    '\tR ‹4.50›',
    '    R ‹4.50›  # 🔍',
  ])('%s', (sample) => {
    const { text } = unmark(sample);
    const { problems } = parseLine(text);
    expect(problems).toHaveLength(1);
    expect(mark(text, problems)).toBe(sample);
  });
});
