import { outside } from './outside';

export const cosmeticFailed = outside(
  'cosmetic-failed',
  ['cosmetic'],
  {
    checks: 'The reading records that the surface or the finish of the pair was not good enough.',
    why: 'A scratch, a pit or a chipped edge is judged by eye, so the file holds only the result. Common practice is to say which lens and what is wrong behind the word.',
    example: { wrong: 'cosmetic failed "scratch R"', right: 'cosmetic passed' },
    source: 'Common practice, no source.',
  },
  () => 'The surface quality was not accepted.',
);
