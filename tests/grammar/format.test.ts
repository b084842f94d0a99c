import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../grammar';
import { formatChanges, formatText } from '../../grammar/format';

const format = (text: string): string => formatText(parseDocument(text));

/** A line of an order, laid out. */
const line = (typed: string): string => format(`order A\n${typed}`).split('\n')[1] as string;

describe('the layout of a line', () => {
  test.each([
    ['R-4.50-0.75x22', '  R           -4.50 -0.75 x 22'],
    ['pd   63   near 60', '  pd          63 near 60'],
    ['frame A52 B36 DBL18 ED55', '  frame       A 52  B 36  DBL 18  ED 55'],
    ['frame 52[]18', '  frame       52[]18'],
    ['prism R 2 BI L 2BI', '  prism       R 2 BI L 2BI'],
    ['prism R 0 L 0', '  prism       R 0  L 0'],
    ['height R 17 L 16.5', '  height      R 17  L 16.5'],
    ['design trifocal flat-top 7x28', '  design      trifocal flat-top 7x28'],
    ['optical-centres 66', '  optical-centres 66'],
    ['note  "two  blanks"   # keep', '  note        "two  blanks"  # keep'],
    ['supply glazed', '  supply      glazed'],
    ['R - 4.50', '  R           - 4.50'],
  ])('%s', (typed, laid) => {
    expect(line(typed)).toBe(laid);
  });

  test('sets the figures of neighbouring powers under one another', () => {
    expect(format('order A\nR +0.50 -0.75 x 022\nL -10.25 -1.00 x 168\n')).toBe(
      'order A\n  R            +0.50 -0.75 x 022\n  L           -10.25 -1.00 x 168\n',
    );
  });

  test('indents the lines of a reading under it, and those that only an order has under the order', () => {
    expect(format('order A\nreading 2026-11-24\nR -2.00\nsupply glazed\nend\nR -2.00\n')).toBe(
      'order A\n  reading 2026-11-24\n    R        -2.00\n  supply      glazed\n  end\n  R           -2.00\n',
    );
  });
});

describe('what stays untouched', () => {
  test.each([
    ['a comment', '   # by hand   '],
    ['an unknown line', 'order A\n zip   3'],
    ['a block without a name for its kind', 'ordr  QL-1\n      R   -2.00'],
    [
      'a reading with a line that may be the order’s',
      'order A\n  pd 63\n  reading 2026-11-24\n    R   -2.00\n  add   +2.00',
    ],
    ['figures that touch', 'order A\n  R           -4.5.0'],
  ])('%s', (_, text) => {
    expect(format(text)).toBe(text);
  });

  test('line ends and a byte order mark', () => {
    expect(format('\uFEFForder A\r\nR  -2.00\rL -2.00\n')).toBe(
      '\uFEFForder A\r\n  R           -2.00\r  L           -2.00\n',
    );
  });

  test('everything outside the asked range', () => {
    const changes = formatChanges(parseDocument('order A\nR  -2.00\nL  -2.00\npd  63'), { first: 2, last: 2 });
    expect(changes).toEqual([{ line: 2, text: '  L           -2.00' }]);
  });
});
