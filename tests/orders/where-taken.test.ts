/** Where a figure was taken decides what it is a figure of. Reference points: ISO 13666, as research/tolerances.md has it. */
import { describe, expect, test } from 'vitest';
import { analyse, type Quantity } from '../../orders';
import { judged, pair } from '../support/judged';

const SINGLE = ['R -1.00', 'L -1.25', 'pd 62', 'design single-vision', 'frame A 50 B 36 DBL 18'];
const SINGLE_READ = ['R -1.00', 'L -1.25', 'pd 62', 'prism R 0 L 0'];
const BIFOCAL = ['R -2.50', 'L -2.25', 'add +2.00', 'pd 63 near 60', 'height 17', 'frame A 52 B 36 DBL 18'];
const BIFOCAL_READ = [
  ...['R -2.50', 'L -2.25', 'add R -2.50 -> -0.50 front-vertex', 'add L -2.25 -> -0.25 front-vertex'],
  ...['pd 63 near 60', 'height R 17 L 17', 'prism R 0 L 0'],
];
const GOOD = { verdict: 'accept', reservations: [] };

const without = (lines: readonly string[], word: string): string[] => lines.filter((line) => !line.startsWith(word));
const missing = (text: string): readonly Quantity[] => [
  ...new Set(judged(text).measures.flatMap(({ outcome, quantity }) => (outcome === 'not-read' ? [quantity] : []))),
];
const errors = (text: string): readonly string[] =>
  analyse(text).blocks.flatMap(({ findings }) =>
    findings.filter(({ level }) => level === 'error').map(({ code }) => code),
  );

describe('away from the reference point', () => {
  test.each(['edge', 'periphery', 'temporal', 'nasal', 'upper', 'lower', 'top', 'near-point'])(
    'a power at %s takes the place of none, and stands for none',
    (place) => {
      const order = [...BIFOCAL, 'design FT28'];
      expect(judged(pair(order, [...BIFOCAL_READ, `R -1.00 at ${place}`]))).toMatchObject(GOOD);
      const only = [...without(BIFOCAL_READ, 'R'), `R -2.50 at ${place}`];
      expect(missing(pair(order, only))).toContain('power');
      expect(errors(pair(order, only))).toEqual([]);
    },
  );

  test.each(['at edgee', 'at the middle', 'at'])('a place that nobody knows: %s', (ending) => {
    const read = [...without(SINGLE_READ, 'R'), `R -1.00 ${ending}`];
    expect(missing(pair(SINGLE, read))).toEqual(['power', 'cylinder']);
    const other = pair(SINGLE, [...SINGLE_READ, `R -3.00 ${ending}`]);
    expect(judged(other).measures.every(({ outcome }) => outcome === 'pass')).toBe(true);
    const { verdict, reservations } = judged(other);
    expect(verdict === 'accept' && reservations.length === 0).toBe(false);
  });

  test.each(['distance-point', 'DRP', 'prism-point', 'distance'])('at %s is the reference point', (place) => {
    expect(judged(pair(SINGLE, [...without(SINGLE_READ, 'R'), `R -1.00 at ${place}`]))).toMatchObject(GOOD);
    expect(judged(pair(SINGLE, [...without(SINGLE_READ, 'R'), `R -2.00 at ${place}`])).verdict).toBe('reject');
  });

  test('prism, adds and heights elsewhere are not those that are called for', () => {
    const order = [...BIFOCAL, 'design FT28'];
    for (const [word, line] of [
      ['prism', 'prism R 0 L 0 at edge'],
      ['add', 'add R +2.00 L +2.00 at edge'],
      ['height', 'height R 17 L 17 at near-point'],
    ] as const)
      expect(missing(pair(order, [...without(BIFOCAL_READ, word), line])).length).toBeGreaterThan(0);
    expect(judged(pair(order, [...BIFOCAL_READ, 'prism R 3 BU L 0 at edge']))).toMatchObject(GOOD);
  });
});

test('pd at near-point is the near distance, ordered and read', () => {
  const order = [...without(BIFOCAL, 'pd'), 'pd 63', 'pd 60 at near-point', 'design FT28'];
  const read = (near: number) => [...without(BIFOCAL_READ, 'pd'), 'pd 63', `pd ${near} at near-point`];
  expect(judged(pair(order, read(60)))).toMatchObject(GOOD);
  expect(judged(pair(order, read(66))).verdict).toBe('reject');
});

test('an order has no place of measurement', () => {
  const order = [...without(SINGLE, 'R'), 'R -1.00 at near-point'];
  expect(judged(pair(order, SINGLE_READ))).toMatchObject({ verdict: 'incomplete', unresolved: ['unexpected-text'] });
});

describe('the upper one of two segments', () => {
  const DOUBLE = [...BIFOCAL, 'design double flat-top 28 gap 13'];
  const UPPER = ['add +1.50 at upper-segment', 'height 30 at upper-segment'];

  test('is called for where it is ordered', () => {
    expect(missing(pair([...DOUBLE, ...UPPER], BIFOCAL_READ))).toEqual(['upper-add', 'upper-height']);
    const read = [...BIFOCAL_READ, 'add R +1.50 L +1.50 at upper-segment', 'height 30 at upper-segment'];
    expect(judged(pair([...DOUBLE, ...UPPER], read))).toMatchObject(GOOD);
    expect(judged(pair([...DOUBLE, ...UPPER], [...read, 'again add R +2.50 at upper-segment'])).verdict).not.toBe(
      'accept',
    );
  });

  test('stands above the lower one by the gap', () => {
    expect(judged(pair(DOUBLE, BIFOCAL_READ))).toMatchObject(GOOD);
    expect(judged(pair(DOUBLE, [...BIFOCAL_READ, 'height 30 at upper-segment']))).toMatchObject(GOOD);
    expect(judged(pair(DOUBLE, [...BIFOCAL_READ, 'height R 33 L 33 at upper-segment'])).verdict).toBe('reject');
  });

  test('is there in a double segment alone', () => {
    const order = [...BIFOCAL, 'design FT28'];
    expect(errors(pair(order, [...BIFOCAL_READ, 'add R +1.50 at upper-segment']))).toEqual(['upper-segment-unordered']);
    expect(errors(pair([...order, UPPER[1] as string], BIFOCAL_READ))).toContain('upper-segment-unordered');
  });
});
