import { outside } from './outside';

export const impactFailed = outside(
  'impact-failed',
  ['impact'],
  {
    checks: 'The reading records a failed impact test.',
    why: 'The lens is not dispensed, whatever its powers. No acceptance and no confirmation covers it; the order needs a new lens and a new test.',
    example: { wrong: 'impact failed', right: 'impact passed' },
    source: 'In the United States 21 CFR 801.410. Elsewhere the law of the place; licensed practice decides.',
  },
  () => 'The impact test failed. This lens is not to be dispensed.',
);
