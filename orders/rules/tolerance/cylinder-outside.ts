import { outside } from './outside';

export const cylinderOutside = outside('cylinder-outside', ['cylinder'], {
  checks: 'The cylinder read is further from the ordered cylinder than the tolerance set allows.',
  why: 'The cylinder is the difference of two drum positions, so a slip in either is a slip in the cylinder. Common practice is to read both lines again, and to make the lens again when the second reading agrees.',
  example: { wrong: 'R -4.50 -0.50 x 022', right: 'R -4.50 -0.75 x 022' },
  source: 'The cylinder columns of the tolerance set that the order names.',
});
