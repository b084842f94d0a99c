import { principalMeridians } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, tidy } from '../../exact';
import type { OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { madeLenses } from './lenses';

/** The power from which on the trade asks for the vertex distance. */
const STRONG = 5;
/** The power at which 2 mm change it by an eighth: 8 x 8 x 0.002 is 0.13. */
const VERY_STRONG = 8;

export const vertexMatters: Rule = {
  code: 'vertex-matters',
  family: 'order',
  level: 'hint',
  page: {
    checks:
      'A lens of 5.00 D or more is ordered, and no vertex distance is given. It is told once; from 8.00 D on as information.',
    why: 'A strong lens works differently when it stands nearer to the eye or further away than the trial lens did. At 8.00 D two millimetres are an eighth of a dioptre, and at 13.50 D they are 0.35.',
    example: { wrong: 'R -6.50 DS', right: 'tested vertex 12' },
    source:
      'Opticians’ forum, “how free-form challenges us”: vertex distance asked for above 5 D. The effect by the vergence formula.',
  },
  message: ({ power }) =>
    `At ${amountInWords(Number(power), 'D')} the vertex distance counts. At which one was it tested, and at which will it be worn?`,
  check: ({ order }, report) => {
    const { tested, asWorn, compensation } = order;
    if (tested || asWorn.vertex || compensation) return;
    let power = 0;
    let strong: OrderedLens | null = null;
    for (const lens of madeLenses(order)) {
      const own = lens.verification ? 0 : strongest(lens);
      if (isLess(own, STRONG) || own <= power) continue;
      power = own;
      strong = lens;
    }
    if (strong?.written)
      report(strong.written.place, { power }, { eye: strong.eye, level: isLess(power, VERY_STRONG) ? 'hint' : 'info' });
  },
};

/** The larger size of the two principal powers of the lens to be made, dioptres. */
function strongest(lens: OrderedLens): number {
  const made = usePower(lens);
  const meridians = made && attempt(() => principalMeridians(made.power));
  return meridians ? tidy(Math.max(Math.abs(meridians[0].power), Math.abs(meridians[1].power))) : 0;
}
