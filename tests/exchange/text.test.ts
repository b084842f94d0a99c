import { describe, expect, test } from 'vitest';
import { CAUTION, type Ink, textWriter, verdictInWords } from '../../exchange';
import { excerpt, harmless } from '../../exchange/findings/excerpt';
import { analyse } from '../../orders';
import { pair } from '../support/judged';

/** Marks what is painted, so that the paint can be seen. */
const ink = new Proxy({} as Ink, { get: (_, part) => (text: string) => `<${String(part)}>${text}</>` });

function written(text: string): string {
  const writer = textWriter(ink);
  const { document, blocks } = analyse(text);
  const parts = [writer.start(), writer.openFile('a.lentil')];
  for (const [at, block] of blocks.entries()) parts.push(writer.block(block, document.starts[at] as number));
  parts.push(writer.closeFile(), writer.end());
  return parts.join('');
}

const ORDER = ['R +1.00 -1.50 x 010', 'L +0.75', 'pd 64', 'design single-vision', 'lens resin-1.50', 'supply glazed'];
const READ = ['L +0.75', 'pd 64', 'prism R 0 L 0'];

test('a finding names its place, its level and its code, with the line and carets under it', () => {
  const lines = written(pair(ORDER, ['R +1.00 -1.50 x 014', ...READ])).split('\n');
  // The likeliest cause stands first at the same place, without the line.
  expect(lines[0]).toMatch(/^<path>a\.lentil:10:7<\/> <info>info<\/> R is turned by 4°.* <code>\[lens-turned\]<\/>$/);
  expect(lines[1]).toMatch(/^<path>a\.lentil:10:7<\/> <error>error<\/> R axis .*4°.* <code>\[axis-outside\]<\/>$/);
  expect(lines[2]).toBe('        R +1.00 -1.50 x 014');
  expect(lines[3]).toBe(`    <caret>      ${'^'.repeat(17)}</>`);
});

test('only the verdict itself is painted', () => {
  const text = written(pair(ORDER, ['R +1.00 -1.50 x 014', ...READ]));
  expect(text).toContain(
    '<path>a.lentil</>\n  T-1  <reject>reject</>: R axis 4° (limit 3°); z80.1-2015, simple acceptance, weakest evidence secondary\n' +
      '       common practice: Loosen the rim, turn the R lens back to the axis, and read again.\n',
  );
});

test('the totals and the caution come last, once', () => {
  const text = written(pair(ORDER, ['R +1.00 -1.50 x 014', ...READ]));
  expect(text.endsWith(`1 order in 1 file: 1 reject; 1 error, 0 warnings.\n<caution>${CAUTION}</>\n`)).toBe(true);
  expect(text.split(CAUTION)).toHaveLength(2);
});

describe('the verdict in one line', () => {
  const verdict = (text: string): string => {
    const block = analyse(text).blocks.find(({ order }) => order);
    if (!block?.order || !block.evaluation) throw new Error('no order');
    return verdictInWords(block.order, block.evaluation);
  };

  test.each([
    [
      'everything inside',
      pair(ORDER, ['R +1.00 -1.50 x 010', ...READ]),
      'accept; z80.1-2015, simple acceptance, weakest evidence secondary',
    ],
    [
      'an eighth on a coarse instrument',
      pair(
        [...ORDER],
        ['R +1.12 -1.62 x 010 with BF-1', ...READ],
        ['standard z80.1-2015', 'instrument BF-1', '  reads-to 0.125'],
      ),
      'accept, near the limit (R power, R cylinder); z80.1-2015, simple acceptance, weakest evidence secondary',
    ],
    [
      'prism with neither sign',
      pair(ORDER, ['R +1.00 -1.50 x 010', 'L +0.75', 'pd 64', 'prism R 0.50 BU L 0']),
      'reject: vertical prism of the pair 0.50 Δ (limit 0.33 Δ); z80.1-2015, simple acceptance, weakest evidence secondary',
    ],
    [
      'something not read',
      pair(ORDER, ['R +1.00 -1.50 x 010', 'pd 64', 'prism R 0 L 0']),
      'incomplete: not read: L power, L cylinder; z80.1-2015, simple acceptance, weakest evidence secondary',
    ],
    ['no standard', pair(ORDER, READ, []), 'incomplete: no standard is named, nothing is judged'],
    ['an unknown standard', pair(ORDER, READ, ['standard z80.1-2051']), 'incomplete: no set called z80.1-2051'],
    ['no reading', ['standard z80.1-2015', 'order T-1', ...ORDER].join('\n'), 'unread; z80.1-2015'],
    [
      'a decision',
      pair(ORDER, ['R +1.00 -1.50 x 014', ...READ, 'decided accept by MT "tried on"']),
      'reject: R axis 4° (limit 3°); z80.1-2015, simple acceptance, weakest evidence secondary; decided: accept by MT, “tried on”',
    ],
  ])('%s', (_, text, words) => {
    expect(verdict(text)).toBe(words);
  });

  test('many failures are counted after the first ones', () => {
    const text = pair(ORDER, [
      'R -1.00 -2.50 x 100',
      'L -0.75',
      'pd 74',
      'prism R 3 BU L 3 BD',
      'cosmetic failed',
      'impact failed',
      'marking failed',
    ]);
    expect(verdict(text)).toMatch(/^reject: R power .* and \d more; z80\.1-2015/);
  });
});

describe('an excerpt', () => {
  test('shows a short line whole', () => {
    expect(excerpt('  R -4.50', 4, 9)).toEqual({ line: '  R -4.50', carets: '    ^^^^^' });
  });

  test('marks one column for an empty span, also behind the end', () => {
    expect(excerpt('  R', 3, 3)).toEqual({ line: '  R', carets: '   ^' });
  });

  test('keeps its columns over tabs and behind an emoji', () => {
    expect(excerpt('\tR\t-4.50', 3, 8)).toEqual({ line: ' R -4.50', carets: '   ^^^^^' });
    expect(excerpt('note 👓 x', 8, 9).carets).toBe('        ^');
  });

  test('cuts a long line around the place', () => {
    const { line, carets } = excerpt(`${'a'.repeat(500)}MARK${'b'.repeat(500)}`, 500, 504);
    expect(line).toMatch(/^…a+MARKb+…$/);
    expect(line.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1)).toBe('MARK');
    expect(line.length).toBeLessThan(110);
  });

  test('never marks beyond what it shows', () => {
    const { line, carets } = excerpt('x'.repeat(400), 0, 400);
    expect(carets.length).toBeLessThanOrEqual(line.length);
  });
});

test('controls and marks that turn the writing round are made visible', () => {
  expect(harmless('a\u001b[31mb\u0007\u202ec\u009b\td')).toBe('a\ufffd[31mb\ufffd\ufffdc\ufffd d');
  expect(harmless('Δ × 👓 ½')).toBe('Δ × 👓 ½');
});
