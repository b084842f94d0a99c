import { putBefore, type Rule } from '../rule';

export const eyeUnsaid: Rule = {
  code: 'eye-unsaid',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A line begins with a power, so no word says which eye it is for.',
    why: 'Two lenses that changed places were worn for a year before anybody looked. Right and left are always named.',
    example: { wrong: '-4.50 -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'One fix for each eye.',
    source: 'A wearer’s weblog tells of the swapped pair. Naming the eye is common practice, no source.',
  },
  message: () => 'Which eye is this for? The line is not taken.',
  fixes: (site) => [
    putBefore(site, 'It is the right eye', 'R ', false),
    putBefore(site, 'It is the left eye', 'L ', false),
  ],
};
