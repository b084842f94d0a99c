import { outside, readAgainstOrdered, unwantedInWords } from './outside';

export const segmentOutside = outside(
  'segment-outside',
  ['segment-width', 'segment-width-difference', 'segment-tilt'],
  {
    checks:
      'A segment has another width than ordered, the two segments differ in width, or the line of a segment or the marks of a progressive stand tilted, by more than the tolerance set allows.',
    why: 'Another width is usually another blank. A tilted segment shows a lens turned in the frame, and its cylinder has turned with it: look at the axis as well.',
    example: { wrong: 'segment R 25 tilt 4 nasal-up', right: 'segment R 28 tilt 1 nasal-up' },
    source: 'The segment tables of the tolerance set that the order names.',
  },
  (measure) => (measure.quantity === 'segment-tilt' ? unwantedInWords(measure) : readAgainstOrdered(measure)),
);
