import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { percentUsed } from './nearly-used-up';

export const warpNearLimit: Rule = {
  code: 'warp-near-limit',
  family: 'bench',
  level: 'info',
  page: {
    checks: 'The warp of a lens is within tolerance and takes up three quarters of it or more.',
    why: 'Warp is not spread by chance around nothing: a lens that shows this much is squeezed by its rim. It grows when the screw is tightened or the frame warms up, and the coating may crack. Open the rim, let the lens settle and clock it again before it goes out.',
    example: { wrong: 'clock L +4.00 @ 090 / +4.87 @ 180', right: 'clock L +4.00 @ 090 / +4.25 @ 180' },
    source: 'The share is common practice, no source. The limit is that of the tolerance set that the order names.',
  },
  message: ({ lens, warp, limit }) =>
    `${lens} warp ${amountInWords(Number(warp), 'D')}, tolerance ${amountInWords(Number(limit), 'D')}: within, but the rim squeezes the lens. Loosen it and clock again.`,
  check: ({ evaluation, context: { nearPercent } }, report) => {
    if (!evaluation.values.figures.warp) return;
    for (const measure of evaluation.measures) {
      const { quantity, outcome, eye, place, deviation, limit } = measure;
      if (quantity !== 'warp' || outcome !== 'pass' || !eye || !place) continue;
      const share = percentUsed(measure);
      if (share === null || share < SHARE) continue;
      // The bench that has chosen a share is told by that.
      if (nearPercent !== null && share >= nearPercent) continue;
      report(place, { lens: eye, warp: deviation, limit: limit?.amount ?? null }, { eye });
    }
  },
};

/** Percent of the limit. Common practice, no source. */
const SHARE = 75;
