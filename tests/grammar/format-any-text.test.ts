import { describe, expect, test } from 'vitest';
import { commentStart, indentOf, type Line, parseDocument, type StoreBlockKind } from '../../grammar';
import { formatChanges, formatText } from '../../grammar/format';
import { BENCH, withoutPlaces } from '../support/lines';
import { anyText, holds, seed } from './support/random-text';

const format = (text: string): string => formatText(parseDocument(text));

const linesOf = (text: string) =>
  parseDocument(text).blocks.flatMap(({ kind, lines }) => lines.map((line) => ({ kind, line })));

const commentOf = ({ text }: Line): string => text.slice(commentStart(text)).trimEnd();
const isOnlyComment = ({ text }: Line): boolean =>
  commentStart(text) === indentOf(text) && commentOf({ text } as Line) !== '';

/** A no-break space that the layout replaces is no longer told of. */
const codesOf = (line: Line, kind: StoreBlockKind): string[] =>
  line.parsed(kind).problems.flatMap(({ code }) => (code === 'look-alike' ? [] : [code]));

describe(`the layout of any text, seed ${seed}`, () => {
  test('laid out twice equals laid out once', () => {
    holds(2000, anyText, (text) => {
      const once = format(text);
      expect(format(once)).toBe(once);
    });
  });

  test('says the same and is told the same', () => {
    holds(2000, anyText, (text) => {
      const before = linesOf(text);
      const after = linesOf(format(text));
      expect(after.map(({ kind }) => kind)).toEqual(before.map(({ kind }) => kind));
      expect(after.map(({ line }) => line.end)).toEqual(before.map(({ line }) => line.end));
      for (const [at, { kind, line }] of before.entries()) {
        const laid = after[at]?.line as Line;
        expect(withoutPlaces(laid.parsed(kind))).toEqual(withoutPlaces(line.parsed(kind)));
        expect(codesOf(laid, kind)).toEqual(codesOf(line, kind));
      }
    });
  });

  test('keeps every comment, and every line that cannot be read as it is', () => {
    holds(2000, anyText, (text) => {
      const after = linesOf(format(text));
      for (const [at, { kind, line }] of linesOf(text).entries()) {
        const laid = after[at]?.line as Line;
        expect(commentOf(laid)).toBe(commentOf(line));
        if (line.parsed(kind).node.kind === 'unknown' || isOnlyComment(line)) expect(laid.text).toBe(line.text);
      }
    });
  });

  test('changes nothing but blanks', () => {
    holds(2000, anyText, (text) => {
      const bare = (typed: string): string => typed.replaceAll(/[^\S\r\n]|[\u200B]/g, '');
      expect(bare(format(text))).toBe(bare(text));
    });
  });

  test('is what its changes make of it', () => {
    holds(500, anyText, (text) => {
      const document = parseDocument(text);
      const changed = formatChanges(document).reduce((edited, { line, text: laid }) => {
        const end = edited.line(line)?.text.length ?? 0;
        return edited.edit({ start: { line, character: 0 }, end: { line, character: end } }, laid);
      }, document);
      expect(changed.text()).toBe(formatText(document));
    });
  });
});

// Each of these once came out differently the second time, or said something else.
describe('pieces that touch, odd blanks and number signs', () => {
  test.each([
    'height 17R',
    'R6R5',
    'base-curve 4.00L',
    'as-worn 7x28',
    'zero +0.03L',
    '\u00A0R-8.47',
    'pd 63\u2009near 60',
    'order\torder',
    'yoked \u2028',
    'material \uFEFF',
    'defaults# x',
    'base-curve 4.00=>#',
    'lens «resin-1.50 ',
    'note "x  ',
  ])('%j', (typed) => {
    const once = format(`order A\n${typed}`);
    expect(format(once)).toBe(once);
    const [before, after] = [linesOf(`order A\n${typed}`), linesOf(once)].map((lines) => lines[1]);
    if (!before || !after) throw new Error('a line went missing');
    expect(withoutPlaces(after.line.parsed(after.kind))).toEqual(withoutPlaces(before.line.parsed(before.kind)));
    expect(codesOf(after.line, after.kind)).toEqual(codesOf(before.line, before.kind));
    expect(commentOf(after.line)).toBe(commentOf(before.line));
  });
});

test('the example laid out stays as it is', () => {
  expect(format(BENCH)).toBe(BENCH);
});
