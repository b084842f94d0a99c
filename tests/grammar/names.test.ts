import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import { said, told } from '../support/lines';
import { unmark } from '../support/marks';

/** Lines with marks where something is told, what they say, and the code told. */
type Row = readonly [sample: string, says: object, code?: string];

function says(title: string, rows: readonly Row[]): void {
  describe(title, () => {
    for (const [sample, expected, code] of rows) {
      test(sample, () => {
        const { text } = unmark(sample);
        expect(told(text)).toEqual({ codes: code === undefined ? [] : [code], marked: sample });
        expect(said(text)).toMatchObject(expected);
      });
    }
  });
}

says('names', [
  ['order QL-1042', { name: 'QL-1042' }],
  ['order 24/1042', { name: '24/1042' }],
  ['order 2026-01-01', { name: '2026-01-01' }],
  ['order 1042', { name: '1042' }],
  ['order -4.50', { name: '-4.50' }],
  ['order R', { name: 'R' }],
  ['order x', { name: 'x' }],
  ['order order', { kind: 'order', name: 'order' }],
  ['order reading', { kind: 'order', name: 'reading' }],
  ['order "order"', { kind: 'order', name: 'order' }],
  ['order "QL 1042"', { name: 'QL 1042' }],
  ['order "QL #1042"', { name: 'QL #1042' }],
  ['order "QL ""old"" 1042"', { name: 'QL "old" 1042' }],
  ['order “QL 1042”', { name: 'QL 1042' }],
  ['order „QL 1042”', { name: 'QL 1042' }],
  ['order «QL 1042»', { name: 'QL 1042' }],
  ['order Ä-7', { name: 'Ä-7' }],
  ['order 🔍', { name: '🔍' }],
  ['order QL‹#1042›', { name: 'QL' }, 'unexpected-text'],
  ['standard ‹"z80.1-2015›', { name: 'z80.1-2015' }, 'quote-open'],
  ['order QL ‹1042›', { name: 'QL' }, 'unexpected-text'],
  ['order ‹"QL 1042›', { name: 'QL 1042' }, 'quote-open'],
  ['reading 2026-11-24 by with with by', { by: 'with', with: 'by' }],
  ['reading 2026-11-24 by "K O" with FOC-A', { by: 'K O', with: 'FOC-A' }],
  ['reading 2026-11-24 by ‹"K O›', { by: 'K O' }, 'quote-open'],
  ['R -4.50 with "FOC B"', { qualifiers: { with: 'FOC B' } }],
  ['remake-of 24/1001 "axis"', { name: '24/1001', why: 'axis' }],
  ['remake-of 24/1001 ‹"axis›', { name: '24/1001', why: 'axis' }, 'quote-open'],
]);

// Days that exist: ISO 8601-1, calendar dates; leap years of the Gregorian calendar.
says('dates and times', [
  ['reading 2026-11-24', { date: '2026-11-24' }],
  ['reading 2024-02-29', { date: '2024-02-29' }],
  ['reading 2000-02-29', { date: '2000-02-29' }],
  ['reading 2026-11-24 14:30', { date: '2026-11-24', time: '14:30' }],
  ['reading 2026-11-24T14:30', { date: '2026-11-24', time: '14:30' }],
  ['reading 2026-11-24 14:30:15', { date: '2026-11-24', time: '14:30:15' }],
  ['reading stage final with FOC-A 2026-11-24', { date: '2026-11-24', stage: 'final', with: 'FOC-A' }],
  ['reading ‹2026-02-29›', { date: '?' }, 'date-impossible'],
  ['reading ‹2100-02-29›', { date: '?' }, 'date-impossible'],
  ['reading ‹2026-13-01›', { date: '?' }, 'date-impossible'],
  ['reading ‹2026-04-31›', { date: '?' }, 'date-impossible'],
  ['reading ‹2026-00-10›', { date: '?' }, 'date-impossible'],
  ['reading ‹01/12/2026›', { date: '?' }, 'date-order'],
  ['reading ‹1.12.2026›', { date: '?' }, 'date-order'],
  ['due ‹01/12/2026›', { date: '?' }, 'date-order'],
  ['calibrated 2026-05-14 due ‹1/6/2027›', { date: '2026-05-14', due: '?' }, 'date-order'],
  ['reading ‹2026-1-4›', { kind: 'reading', date: '2026-01-04' }, 'other-spelling'],
  ['reading ‹2026.11.24›', { kind: 'reading', date: '2026-11-24' }, 'other-spelling'],
  ['reading 2026-11-24 ‹25:10›', { date: '2026-11-24' }, 'time-impossible'],
]);

says('comments', [
  ['# R 4.50', { kind: 'blank' }],
  ['  # R 4.50', { kind: 'blank' }],
  ['#R 4.50', { kind: 'blank' }],
  ['R -4.50 # tray 7', { entries: [{ eye: 'R', power: { sphere: -4.5 } }] }],
  ['R -4.50 ‹# R 4.50›', { entries: [{ eye: 'R', power: { sphere: -4.5 } }] }, 'figures-in-remark'],
  ['R -4.50\t# tray 7', { entries: [{ eye: 'R', power: { sphere: -4.5 } }] }],
  ['R -4.50 #', { entries: [{ eye: 'R', power: { sphere: -4.5 } }] }],
  ['R -4.50‹# no›', { entries: [{ eye: 'R', power: { sphere: -4.5 } }] }, 'unexpected-text'],
  ['note a # b', { text: 'a' }],
  ['note a#b', { text: 'a#b' }],
  ['note "a # b" # c', { text: 'a # b' }],
  ['note “a # b” # c', { text: 'a # b' }],
  ['note «a # b» # c', { text: 'a # b' }],
  ['note "a ""b # c"" d" # e', { text: 'a "b # c" d' }],
  ['confirmed axis-short "R -4.50 # x" "why" by KO # no', { quote: 'R -4.50 # x', why: 'why', by: 'KO' }],
  ['ref tray ‹#7›', { text: 'tray' }, 'text-cut'],
  ['ref "tray #7"', { text: 'tray #7' }],
  ['ref tray # 7', { text: 'tray' }],
]);

says('free facts', [
  ['note call before edging', { text: 'call before edging' }],
  ['note   call   twice  ', { text: 'call   twice' }],
  ['note R -4.50 -0.75', { text: 'R -4.50 -0.75' }],
  ['note “soon”', { text: 'soon' }],
  ['note ‹"a # b›', { text: 'a # b' }, 'quote-open'],
  ['note ‹“a # b›', { text: 'a # b' }, 'quote-open'],
  ['cosmetic failed scratch R', { kind: 'results', detail: 'scratch R' }],
  ['impact batch ‹"cert 88›', { kind: 'results', detail: 'cert 88' }, 'quote-open'],
  ['decided reject by MT edge chipped', { verdict: 'reject', by: 'MT', why: 'edge chipped' }],
  ['confirmed axis-short ‹"R -4.50›', { code: 'axis-short', quote: 'R -4.50' }, 'quote-open'],
]);

describe('no line', () => {
  test.each(['', ' ', '\t', '\u00A0\u2003', '# only a comment'])('%j is blank', (line) => {
    expect(parseLine(line)).toEqual({ node: { kind: 'blank', head: null }, problems: [] });
  });

  test.each(['‹ordr› QL-1043', '‹zip›', '‹Ä›', '‹!›', '‹"R -4.50"›', '‹@ 022›'])('%s is unknown', (sample) => {
    const { text } = unmark(sample);
    expect(told(text)).toEqual({ codes: ['unknown-line'], marked: sample });
    expect(said(text)).toEqual({ kind: 'unknown' });
  });
});
