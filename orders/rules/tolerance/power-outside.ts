import { outside } from './outside';

export const powerOutside = outside('power-outside', ['power'], {
  checks:
    'The power read in a principal meridian is further from the ordered power than the tolerance set allows. The meridian of higher power is judged, or both where the set says so.',
  why: 'Blur of a quarter dioptre is seen by most wearers. Measure again with the focimeter set to zero and the lens flat on the stop before the lens is blamed; after that common practice is to make it again, by the rules of the lab.',
  example: { wrong: 'R -4.75 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
  source: 'The power table of the tolerance set that the order names; each limit shows its row and its evidence.',
});
