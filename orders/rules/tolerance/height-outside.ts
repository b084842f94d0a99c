import { outside } from './outside';

export const heightOutside = outside('height-outside', ['height', 'upper-height'], {
  checks:
    'The height of a segment or of a fitting point differs from the ordered height by more than the tolerance set allows.',
  why: 'A segment too high is in the way when walking, one too low is not reached when reading. Heights are taken from the lower tangent of the boxed lens, not from the deepest point below the pupil. Common practice is to try the nose pads before the lens is refused.',
  example: { wrong: 'height R 20 L 17', right: 'height R 17 L 17' },
  source: 'The segment and fitting-point tables of the tolerance set that the order names.',
});
