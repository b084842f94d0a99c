import { outside, unwantedInWords } from './outside';

export const warpOutside = outside(
  'warp-outside',
  ['warp'],
  {
    checks: 'The front surface has more cylinder after mounting than the tolerance set allows.',
    why: 'A lens squeezed into a tight rim bends, and its optics with it. Common practice is to loosen the rim and look again; if the warp stays, the lens was edged too large.',
    example: { wrong: 'clock R +4.00 @ 090 / +5.50 @ 180', right: 'clock R +4.37 @ 090 / +4.12 @ 180' },
    source: 'The warp limit of the tolerance set that the order names.',
  },
  unwantedInWords,
);
