import { outside } from './outside';

export const axisOutside = outside('axis-outside', ['axis'], {
  checks:
    'The axis read is further from the ordered axis than the tolerance set allows for that cylinder. Axes are compared the short way round: 178 and 002 are four degrees apart.',
  why: 'A cylinder C that is turned by an angle leaves a cylinder of 2 x C x sin(angle) uncorrected. See first whether the lens has turned in the rim: level engravings or a level segment line speak for surfacing, tilted ones for the mounting.',
  example: { wrong: 'R -4.50 -0.75 x 034', right: 'R -4.50 -0.75 x 022' },
  source:
    'The axis table of the tolerance set that the order names. The left-over cylinder is that of two crossed cylinders.',
});
