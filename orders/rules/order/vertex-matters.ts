import { effectivePower, principalMeridians } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess, roundTo, tidy } from '../../exact';
import type { OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import { amountInWords, signed } from '../../words';
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
      'A lens of 5.00 D or more is ordered, and no vertex distance is given. It is told once, with what 2 mm change at the eye.',
    levels: 'A hint; an info from 8.00 D on, and a warning where that is plus.',
    why: 'A strong lens works differently when it stands nearer to the eye or further away than the trial lens did. At 8.00 D two millimetres are an eighth of a dioptre, and at 13.50 D they are 0.35. A strong plus lens is the lens of an eye that can make up for none of it, and is worn at all distances.',
    example: { wrong: 'R -6.50 DS', right: 'tested vertex 12' },
    source:
      'Opticians’ forum, “how free-form challenges us”: vertex distance asked for above 5 D. The effect by the vergence formula. The levels: common practice, no source.',
  },
  message: ({ power, change }) =>
    `At ${signed(Number(power))} D the vertex distance counts: 2 mm change the power at the eye by ${amountInWords(Number(change), 'D')}. At which one was it tested, and at which will it be worn?`,
  check: ({ order }, report) => {
    const { tested, asWorn, compensation } = order;
    if (tested || asWorn.vertex || compensation) return;
    let power = 0;
    let strong: OrderedLens | null = null;
    for (const lens of madeLenses(order)) {
      const own = lens.verification ? 0 : strongest(lens);
      if (isLess(Math.abs(own), STRONG) || Math.abs(own) <= Math.abs(power)) continue;
      power = own;
      strong = lens;
    }
    if (!strong?.written) return;
    const level = isLess(Math.abs(power), VERY_STRONG) ? 'hint' : power > 0 ? 'warning' : 'info';
    report(strong.written.place, { power, change: changeAt(power) }, { eye: strong.eye, level });
  },
};

/** How much the power at the eye changes when the lens comes 2 mm nearer, dioptres as a size. */
function changeAt(power: number): number {
  const nearer = attempt(() => effectivePower({ sphere: power, cylinder: 0, axis: 180 }, -MOVED));
  return nearer ? roundTo(Math.abs(nearer.sphere - power), 2) : 0;
}

/** Millimetres. */
const MOVED = 2;

/** The principal power of larger size of the lens to be made, dioptres. */
function strongest(lens: OrderedLens): number {
  const made = usePower(lens);
  const meridians = made && attempt(() => principalMeridians(made.power));
  if (!meridians) return 0;
  const [first, second] = [meridians[0].power, meridians[1].power];
  return tidy(Math.abs(first) >= Math.abs(second) ? first : second);
}
