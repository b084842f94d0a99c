import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar';
import { checkTold, read } from './support/check-told';

describe('words to choose from', () => {
  test.each([
    ['supply', ['glazed', 'edged', 'uncut']],
    ['compensation', ['none', 'done', 'vertex', 'by-maker']],
    ['split', ['free', 'equal', 'as-written']],
    ['purpose', ['general', 'safety', 'child']],
  ])('%s', (which, words) => {
    for (const choice of words) {
      checkTold(`${which} ${choice}`, []);
      expect(read(`${which} ${choice.toUpperCase()}`)).toEqual({ which, choice });
    }
    checkTold(`${which} ‹glassed›`, ['unknown-choice']);
    expect(parseLine(`${which} glassed`).problems[0]?.data).toEqual({ word: 'glassed', known: words });
    checkTold(`‹${which}›`, ['value-missing']);
  });

  test('only what is recorded may be followed by a remark', () => {
    expect(read('cosmetic failed "scratch R"')).toEqual({
      which: 'cosmetic',
      results: [{ word: 'failed' }],
      detail: 'scratch R',
    });
    expect(read('impact batch cert 88')).toEqual({ which: 'impact', results: [{ word: 'batch' }], detail: 'cert 88' });
    checkTold('supply glazed ‹soon›', ['unexpected-text']);
    // Whether a result is one is told where it stands in a reading.
    expect(read('cosmetic ok')).toEqual({ which: 'cosmetic', results: [{ word: 'ok' }] });
  });

  test('lines that say all with their first word', () => {
    for (const line of ['yoked', 'defaults', 'end']) {
      checkTold(line, []);
      checkTold(`${line} ‹x 2›`, ['unexpected-text']);
    }
    expect(read('yoked')).toEqual({ which: 'split', choice: 'yoked' });
  });
});

describe('eyes and decisions', () => {
  test('make and replaced', () => {
    expect(read('make R')).toEqual({ which: 'make', eyes: ['R'] });
    expect(read('make OD OS')).toEqual({ which: 'make', eyes: ['R', 'L'] });
    expect(read('replaced R "axis"')).toEqual({ which: 'replaced', eyes: ['R'], reason: 'axis' });
    expect(read('replaced L axis off')).toMatchObject({ reason: 'axis off' });
    checkTold('make R ‹only›', ['unexpected-text']);
    checkTold('‹make›', ['value-missing']);
  });

  test('decided', () => {
    const remake = { verdict: 'remake', eyes: ['R'], by: 'MT', why: 'axis off' };
    for (const line of [
      'decided remake R by MT "axis off"',
      'decided remake R "axis off" by MT',
      'decided remake R by MT axis off',
    ]) {
      checkTold(line, []);
      expect(read(line)).toEqual(remake);
    }
    expect(read('decided reject')).toEqual({ verdict: 'reject' });
    checkTold('decided ‹perhaps›', ['unknown-choice']);
    checkTold('reading 2026-11-24 stage ‹half›', ['unknown-choice']);
    checkTold('decided accept ‹by›', ['value-missing']);
  });

  test('confirmed quotes the line it rests on', () => {
    const line = 'confirmed axis-short "R -4.50 -0.75 x 5" "clinic says 5" by KO';
    checkTold(line, []);
    expect(read(line)).toEqual({ code: 'axis-short', quote: 'R -4.50 -0.75 x 5', why: 'clinic says 5', by: 'KO' });
    checkTold('confirmed ‹axis-short›', ['value-missing']);
    checkTold('confirmed axis-short ‹R -4.50 -0.75 x 5›', ['unexpected-text']);
  });

  test('a remake names its order and may say why', () => {
    expect(read('remake-of QL-1001 "axis"')).toEqual({ name: 'QL-1001', why: 'axis' });
    expect(read('remake-of 24/1001 axis off')).toEqual({ name: '24/1001', why: 'axis off' });
  });
});

describe('limits of a tolerance', () => {
  test.each([
    ['power 0.12', { which: 'power', limit: 0.12 }],
    ['axis to 0.25 10', { which: 'axis', band: 'to', bound: 0.25, limit: 10 }],
    ['axis above 1.50 2', { which: 'axis', band: 'above', bound: 1.5, limit: 2 }],
    ['pd 2.0', { which: 'pd', limit: 2 }],
    ['height-difference 1.0', { which: 'height-difference', limit: 1 }],
    ['add 0.12', { which: 'add', limit: 0.12 }],
    ['prism 0.33', { which: 'prism', limit: 0.33 }],
  ])('%s', (line, limit) => {
    checkTold(line, [], 'tolerance');
    expect(read(line, 'tolerance')).toEqual(limit);
  });

  test('what is missing', () => {
    checkTold('‹power›', ['value-missing'], 'tolerance');
    checkTold('axis ‹to›', ['value-missing'], 'tolerance');
    checkTold('‹axis› to 0.50', ['value-missing'], 'tolerance');
    checkTold('power ‹-0.12›', ['length-negative'], 'tolerance');
    checkTold('power 0.12 ‹or so›', ['unexpected-text'], 'tolerance');
  });

  test('other lines read there as anywhere, and limits are no lines elsewhere', () => {
    expect(read('note so', 'tolerance')).toEqual({ which: 'note', text: 'so' });
    expect(read('standard z80.1-2015', 'tolerance')).toEqual({ name: 'z80.1-2015' });
    for (const word of ['power', 'cylinder', 'axis', 'height-difference']) checkTold(`‹${word}› 1`, ['unknown-line']);
  });
});

test('an unknown first word is told alone, and half a word still is one', () => {
  for (const line of ['‹foo›', '‹foo› bar 3', '  ‹heigth› 17', '‹ordr› QL-1043', '‹ber›', '‹base-kurve› 4'])
    checkTold(line, ['unknown-line']);
  expect(parseLine('heigth 17').node.head?.word).toBe('heigth');
});
