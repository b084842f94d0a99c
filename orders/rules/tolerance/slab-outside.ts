import { outside } from './outside';

export const slabOutside = outside('slab-outside', ['slab'], {
  checks:
    'The slab-off measured differs from the ordered one by more than the vertical prism that the set allows, stands on the other lens, or is there without being ordered.',
  why: 'A slab-off that is too weak, too strong or on the wrong lens leaves the wearer with vertical prism when reading. No set prints a limit for it; that for unwanted vertical prism is taken.',
  example: { wrong: 'slab-off R 4.00', right: 'slab-off R 3.50' },
  source:
    'The vertical prism limit of the tolerance set that the order names; that it is taken here: common practice, no source.',
});
