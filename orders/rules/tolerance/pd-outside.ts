import { outside } from './outside';

export const pdOutside = outside('pd-outside', ['pd'], {
  checks:
    'The distance between the points that should stand before the pupils differs from the ordered PD by more than the tolerance set allows.',
  why: 'In strong lenses a few millimetres make more prism than the eyes can bear, and in a progressive they move the corridor out of the line of sight. Common practice is to spot both lenses again and to look whether one lens or both are displaced.',
  example: { wrong: 'pd 68', right: 'pd 63' },
  source: 'The tables for mounted pairs of the tolerance set that the order names.',
});
