import { outside, unwantedInWords } from './outside';

export const prismOutside = outside(
  'prism-outside',
  ['prism', 'prism-horizontal', 'prism-vertical'],
  {
    checks:
      'The pair, or one lens where the set limits each, makes more prism than was ordered, by more than the tolerance set allows. It is worked out from measured prism, or from the place of the centres and the power of the lenses.',
    why: 'Unwanted vertical prism gives double vision at small amounts, horizontal prism gives strain. One displaced centre is told once, as prism and in millimetres. Common practice is to spot the centres again at the PD and heights of the order; a lens set wrongly in the frame can sometimes be moved, one ground wrongly cannot.',
    example: { wrong: 'prism R 1.00 BD L 0', right: 'prism R 0 L 0' },
    source: 'The tables for mounted pairs of the tolerance set that the order names; millimetres by Prentice’s rule.',
  },
  unwantedInWords,
);
