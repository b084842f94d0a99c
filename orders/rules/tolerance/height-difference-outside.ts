import { outside } from './outside';

export const heightDifferenceOutside = outside('height-difference-outside', ['height-difference'], {
  checks:
    'The two heights of a pair are out by different amounts: the difference of the two errors is larger than the tolerance set allows. Unequal heights may be ordered.',
  why: 'Two segments at unequal heights are seen at a glance and give one eye the reading field before the other; unequal centres make vertical prism. Each height may be within its own limit and the pair still be wrong.',
  example: { wrong: 'height R 18 L 16', right: 'height R 17 L 17' },
  source: 'The tables for pairs of the tolerance set that the order names.',
});
