import { outside } from './outside';

export const baseCurveOutside = outside('base-curve-outside', ['base-curve'], {
  checks: 'The front curve read differs from the ordered base curve by more than the tolerance set allows.',
  why: 'A base curve is ordered to match an old pair or a fellow lens; another one changes magnification and shape even when the power is right. A lens measure is meant for one index and for spheres: compare clock with clock, and leave aspheres out.',
  example: { wrong: 'base-curve R 6.00', right: 'base-curve R 4.00' },
  source: 'The tolerance set that the order names; base curves are quoted for index 1.530.',
});
