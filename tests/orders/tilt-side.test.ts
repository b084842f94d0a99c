/**
 * The side of a tilt. Axes count counter-clockwise as seen facing the wearer (ISO 8429): a turn of the whole lens moves a
 * point at the nasal end of its segment as a rotation of the plane does, which is what is compared here. That level or
 * contrary marks speak for surfacing: opticians’ forum on axis tolerance.
 */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../orders';
import { tiltByTurn } from '../../orders/causes/lone-turn';
import { pair } from '../support/judged';

const ORDER = [
  'R -2.50 -1.00 x 020',
  'L -2.25 -1.00 x 160',
  'add +2.00',
  'pd 63 near 60',
  'height 17',
  'design FT28',
  'frame A 46 B 42 DBL 18',
];
const REST = ['add R +2.00 front-vertex L +2.00 front-vertex', 'pd 63 near 60', 'height 17', 'prism R 0 L 0'];

function causes(eye: 'R' | 'L', turn: number, tilt: string): readonly string[] {
  const axis = (side: 'R' | 'L', ordered: number) => String(side === eye ? ordered + turn : ordered).padStart(3, '0');
  const read = [`R -2.50 -1.00 x ${axis('R', 20)}`, `L -2.25 -1.00 x ${axis('L', 160)}`, `segment ${eye} 28 ${tilt}`];
  return analyse(pair(ORDER, [...read, ...REST])).blocks.flatMap(({ findings }) =>
    findings.map(({ code }) => code).filter((code) => code === 'lens-turned' || code === 'surfaced-off-axis'),
  );
}

test.each(['R', 'L'] as const)('a turn of the plane lifts or lowers the nasal end of %s', (eye) => {
  // Seen facing the wearer the nasal end of the right lens lies to the right of its centre, that of the left lens to the left.
  const nasal = eye === 'R' ? 1 : -1;
  for (const turn of [-20, -8, 5, 12]) {
    const y = nasal * Math.sin((turn * Math.PI) / 180);
    expect(Math.sign(tiltByTurn(eye, turn))).toBe(Math.sign(y));
    expect(Math.abs(tiltByTurn(eye, turn))).toBe(Math.abs(turn));
  }
});

describe('turn and tilt', () => {
  test.each([
    ['R', 10, 'tilt 10 nasal-up', 'lens-turned'],
    ['R', -10, 'tilt 10 nasal-down', 'lens-turned'],
    ['L', 10, 'tilt 10 nasal-down', 'lens-turned'],
    ['L', -10, 'tilt 10 nasal-up', 'lens-turned'],
    ['R', 10, 'tilt 10 nasal-down', 'surfaced-off-axis'],
    ['L', 10, 'tilt 10 nasal-up', 'surfaced-off-axis'],
    ['R', 10, 'tilt 3 nasal-down', 'surfaced-off-axis'],
    ['R', 10, 'tilt 0 nasal-up', 'surfaced-off-axis'],
    ['L', -10, 'tilt 1 nasal-down', 'surfaced-off-axis'],
    // Without its side only the size of a tilt is known.
    ['R', 10, 'tilt 10', 'lens-turned'],
    ['L', 10, 'tilt 10', 'lens-turned'],
  ] as const)('%s turned by %s, %s: %s', (eye, turn, tilt, code) => {
    expect(causes(eye, turn, tilt)).toEqual([code]);
  });

  test('the same way but by another amount is neither story', () => {
    expect(causes('R', 12, 'tilt 5 nasal-up')).toEqual([]);
  });
});
