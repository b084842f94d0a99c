/**
 * A slab-off ordered and read. No tolerance set prints a limit for it; that for unwanted vertical prism is taken (common
 * practice, no source). The lens measure is held against two planes that meet under its middle pin.
 */
import { describe, expect, test } from 'vitest';
import { analyse, readingToTake } from '../../orders';
import { lineToTakeInText } from '../../orders/lines-to-take';
import { judged, measureOf, pair } from '../support/judged';

const ORDER = ['R -5.50', 'L -2.25', 'add +2.00', 'pd 63 near 60', 'height 17', 'design FT28', 'lens resin-1.50'];
const FRAME = 'frame A 52 B 36 DBL 18';
const READ = [
  ...['R -5.50', 'L -2.25', 'add R -5.50 -> -3.50 front-vertex', 'add L -2.25 -> -0.25 front-vertex'],
  ...['pd 63 near 60', 'height R 17 L 17', 'prism R 0 L 0'],
];

const text = (slab: string, ...read: readonly string[]): string => pair([...ORDER, FRAME, slab], [...READ, ...read]);
const verdict = (slab: string, ...read: readonly string[]) => judged(text(slab, ...read)).verdict;
const codes = (source: string): readonly string[] =>
  analyse(source).blocks.flatMap(({ findings }) => findings.map(({ code }) => code));

test('it is called for where it is ordered', () => {
  expect(verdict('slab-off R 3.00')).toBe('incomplete');
  expect(measureOf(text('slab-off R 3.00'), 'slab', 'R').outcome).toBe('not-read');
  const { blocks, context } = analyse(text('slab-off R 3.00'));
  const order = blocks.find((one) => one.order)?.order;
  const lines = order
    ? readingToTake(order, context).map((line) => lineToTakeInText(line, ({ expected }) => expected ?? ''))
    : [];
  expect(lines).toContain('slab-off R 3.00  # expect 3.00');
});

describe('by its prism', () => {
  test.each([
    ['slab-off R 3.00', 'slab-off R 3.00', 'accept'],
    ['slab-off R 3.00', 'slab-off R 2.75 BU', 'accept'],
    // Z80.1 allows 0.33 of vertical prism.
    ['slab-off R 3.00', 'slab-off R 3.33', 'accept'],
    ['slab-off R 3.00', 'slab-off R 3.34', 'reject'],
    ['slab-off R 3.00', 'slab-off R 2.50', 'reject'],
    ['slab-off R 3.00', 'reverse-slab R 3.00', 'reject'],
    ['slab-off R 3.00', 'slab-off L 3.00', 'reject'],
    ['reverse-slab L 3.00', 'reverse-slab L 3.12', 'accept'],
    ['reverse-slab L 3.00', 'slab-off L 3.00', 'reject'],
  ])('%s, read %s: %s', (slab, read, expected) => {
    expect(verdict(slab, read)).toBe(expected);
  });

  test('a base that it cannot have is not understood', () => {
    expect(verdict('slab-off R 3.00', 'slab-off R 3.00 BD')).toBe('incomplete');
  });

  test('one that was not ordered is another lens', () => {
    expect(judged(pair([...ORDER, FRAME], [...READ, 'slab-off R 3.00'])).verdict).toBe('reject');
  });

  test('its limit says where it comes from', () => {
    const { limit } = measureOf(text('slab-off R 3.00', 'slab-off R 3.00'), 'slab', 'R');
    expect(limit?.amount).toBe(0.33);
    expect(limit?.note).toContain('no source');
  });
});

/** What the dial moves when two planes at an angle meet under its middle pin, worked out from the sag of the pins. */
function dialShift(prism: number, index: number): number {
  const slope = prism / 100 / (index - 1);
  const halfSpan = 0.01;
  // Each side falls by half the angle: the sag under the middle pin, and the curve that has that sag.
  const sag = (slope / 2) * halfSpan;
  return ((1.53 - 1) * 2 * sag) / halfSpan ** 2;
}

describe('by two curves', () => {
  test.each([
    ['resin-1.50', 1.498],
    ['resin-1.67', 1.665],
  ])('in %s the dial is converted', (material, near) => {
    const lens = ORDER.map((line) => (line.startsWith('lens') ? `lens ${material}` : line));
    const of = (shift: number) =>
      measureOf(
        pair(
          [...lens, FRAME, 'slab-off R 3.00'],
          [...READ, `slab-off R clock +6.25 -> ${(6.25 - shift).toFixed(2).replace(/^(?=\d)/, '+')}`],
        ),
        'slab',
        'R',
      );
    const shift = Math.round(dialShift(3, near) * 8) / 8;
    // An eighth of the dial is at most 0.16 here.
    expect(of(shift).read).toBeGreaterThan(2.84);
    expect(of(shift).read).toBeLessThan(3.16);
    expect(of(shift).outcome).toBe('pass');
    expect(of(shift - 0.75).outcome).toBe('fail');
    expect(of(-shift).outcome).toBe('pass');
  });

  test('are never an add and never a warp', () => {
    const bare = pair(
      [...ORDER, FRAME, 'slab-off R 3.00'],
      [
        ...READ.filter((line) => !line.startsWith('add R')),
        'clock R +6.25 -> +8.25',
        'clock R +6.25 @ 090 / +3.25 @ 180',
      ],
    );
    const measures = judged(bare).measures;
    expect(measures.find(({ quantity, eye }) => quantity === 'add' && eye === 'R')?.outcome).toBe('not-read');
    expect(measures.some(({ quantity }) => quantity === 'warp')).toBe(false);
    expect(codes(bare)).toContain('clock-on-slab');
    expect(judged(bare).verdict).toBe('incomplete');
  });

  test('are no order', () => {
    expect(verdict('slab-off R clock +6.25 -> +3.25', 'slab-off R 3.00')).not.toBe('accept');
  });
});
