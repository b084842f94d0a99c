import { putBefore, type Rule } from '../rule';

export const prismEyeUnsaid: Rule = {
  code: 'prism-eye-unsaid',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A prism stands behind an add that both eyes share.',
    why: 'It may be meant for the left eye alone or for each of them, which is twice the effect.',
    example: { wrong: 'R -4.50 L -4.25 add +2.00 prism 2.00 BI', right: 'prism L 2.00 BI' },
    fix: 'One fix for each eye.',
    source: 'Common practice, no source.',
  },
  message: () => 'Which eye is this prism for? It is not taken.',
  fixes: (site) => [
    putBefore(site, 'It is for the left eye', 'L ', false),
    putBefore(site, 'It is for the right eye', 'R ', false),
  ],
};
