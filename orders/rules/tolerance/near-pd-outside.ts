import { outside } from './outside';

export const nearPdOutside = outside('near-pd-outside', ['near-pd'], {
  checks: 'The distance between the segments differs from the ordered near PD by more than the tolerance set allows.',
  why: 'Segments too far apart or too close make the two reading fields overlap less, and put prism where the wearer reads. Common practice is to measure from the inner edge of one segment to the outer edge of the other.',
  example: { wrong: 'pd 63 near 65', right: 'pd 63 near 60' },
  source: 'The segment table of the tolerance set that the order names.',
});
