import { outside } from './outside';

export const markingFailed = outside(
  'marking-failed',
  ['marking'],
  {
    checks: 'The reading records that the marks on the lens or the frame are missing or wrong.',
    why: 'Marks tell what the lens is: the engravings of a progressive, the marks of safety eyewear. Without them nobody can check the pair later, and safety eyewear without its marks is no safety eyewear.',
    example: { wrong: 'marking failed "no + on the lens"', right: 'marking passed "Z87+"' },
    source: 'Common practice, no source; which marks safety eyewear must carry is for its standard to say.',
  },
  () => 'The marks on the pair failed.',
);
