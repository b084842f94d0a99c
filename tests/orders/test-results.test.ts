/** Tests recorded as passed or failed: by lens, by pair, once more. Common practice, no source, except where one is named. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../orders';
import { judged, pair } from '../support/judged';

const ORDER = ['R -1.00', 'L -1.25', 'pd 62', 'design single-vision', 'frame A 50 B 36 DBL 18'];
const READ = ['R -1.00', 'L -1.25', 'pd 62', 'prism R 0 L 0'];

const text = (...lines: readonly string[]): string => pair(ORDER, [...READ, ...lines]);
const codes = (source: string): readonly string[] =>
  analyse(source).blocks.flatMap(({ findings }) =>
    findings.filter(({ level }) => level === 'error' || level === 'warning').map(({ code }) => code),
  );

describe('each lens has its own result', () => {
  test.each([
    'impact passed',
    'impact R passed L passed',
    'impact R L passed',
    'impact both passed',
    'impact batch "cert 88"',
    'impact passed drop ball 16 mm',
    'cosmetic passed "small bubble outside the rim"',
    'marking R passed L passed "level"',
  ])('%s is a plain accept', (line) => {
    expect(judged(text(line))).toMatchObject({ verdict: 'accept', reservations: [] });
    expect(codes(text(line))).toEqual([]);
  });

  test.each([
    ['impact passed L failed', ['impact-failed']],
    ['impact R passed L failed "edge chipped"', ['impact-failed']],
    ['cosmetic passed L failed "scratch"', ['cosmetic-failed']],
    ['cosmetic failed "scratch R"', ['cosmetic-failed']],
    ['impact passed failed', ['result-unclear', 'impact-failed']],
    ['impact failed passed', ['result-unclear', 'impact-failed']],
    ['impact batch failed', ['result-unclear', 'impact-failed']],
    ['impact R passed R failed L passed', ['result-unclear', 'impact-failed']],
  ])('%s is rejected', (line, told) => {
    expect(judged(text(line)).verdict).toBe('reject');
    expect(codes(text(line))).toEqual(expect.arrayContaining(told));
  });

  test.each([
    ['impact passed "L failed"', 'result-unclear'],
    ['impact passed but L failed', 'result-unclear'],
    ['impact passed, R cracked', 'result-unclear'],
    ['impact R passed L faild', 'measured-word'],
    ['impact passed L faild', 'measured-word'],
    ['impact passed faild', 'measured-word'],
    ['cosmetic passd', 'measured-word'],
  ])('%s is not understood, and not accepted', (line, code) => {
    expect(judged(text(line))).toMatchObject({ verdict: 'incomplete', unresolved: [code] });
  });

  test.each(['impact R passed', 'impact passed R', 'cosmetic L passed'])('%s leaves the other lens waiting', (line) => {
    const missing = judged(text(line)).measures.filter(({ outcome }) => outcome === 'not-read');
    expect(missing).toHaveLength(1);
    expect(judged(text(line)).verdict).toBe('incomplete');
  });

  test('a lens that is not made needs no test', () => {
    const order = [...ORDER, 'make R'].filter((line) => !line.startsWith('L'));
    expect(judged(pair(order, ['R -1.00', 'pd 62', 'prism R 0 L 0', 'impact R passed'])).measures).not.toContainEqual(
      expect.objectContaining({ quantity: 'impact', outcome: 'not-read' }),
    );
  });
});

describe('a failed test followed by a passed one', () => {
  const later = (first: string, ...lines: readonly string[]): string => text(first, 'reading 2026-11-25', ...lines);
  const RENEWED = ['replaced R', 'R -1.00', 'pd 62', 'prism R 0 L 0'];

  // 21 CFR 801.410: a lens that broke is not dispensed.
  test('a broken lens is not mended by a second test', () => {
    expect(judged(text('impact failed', 'impact passed')).verdict).toBe('reject');
    expect(judged(later('impact failed', 'impact passed')).verdict).toBe('reject');
    expect(judged(later('impact R failed L passed', 'impact R passed')).verdict).toBe('reject');
    expect(judged(later('impact L failed R passed', ...RENEWED, 'impact passed')).verdict).toBe('reject');
  });

  test('nor by one at another stage', () => {
    const edged = pair(ORDER, ['impact failed', 'reading 2026-11-25', ...READ, 'impact passed']).replace(
      'reading 2026-11-24',
      'reading 2026-11-24 stage edged',
    );
    expect(judged(edged).verdict).toBe('reject');
  });

  test('a new lens with its own test is accepted', () => {
    const good = { verdict: 'accept', reservations: [] };
    expect(judged(later('impact R failed L passed', ...RENEWED, 'impact R passed'))).toMatchObject(good);
    expect(judged(later('impact failed', ...RENEWED, 'impact passed'))).toMatchObject(good);
  });

  test('a test of the pair speaks for the lens that stayed, and not for the new one', () => {
    const untested = judged(later('impact passed', ...RENEWED));
    expect(untested.verdict).toBe('incomplete');
    expect(
      untested.measures.filter(({ quantity }) => quantity === 'impact').map(({ eye, outcome }) => [eye, outcome]),
    ).toEqual([
      ['R', 'not-read'],
      ['L', 'pass'],
    ]);
    expect(judged(later('impact passed', ...RENEWED, 'impact R passed')).verdict).toBe('accept');
  });

  test.each(['cosmetic', 'marking'])('%s: accepted with the question what was done', (word) => {
    expect(judged(later(`${word} failed`, `${word} passed`))).toMatchObject({
      verdict: 'accept',
      reservations: ['tested-again'],
    });
    expect(judged(later(`${word} L failed R passed`, `${word} L passed`)).reservations).toEqual(['tested-again']);
    expect(judged(later(`${word} R failed L passed`, ...RENEWED, `${word} R passed`)).reservations).toEqual([]);
    expect(judged(later(`${word} passed`, `${word} failed`)).verdict).toBe('reject');
  });
});
