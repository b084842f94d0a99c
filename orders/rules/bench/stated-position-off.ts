import type { Eye } from '../../../grammar';
import type { PrismVector } from '../../../optics';
import { isLess, tidy } from '../../exact';
import { isSingleVision } from '../../lens-kinds';
import { lensPrismLimits } from '../../limits';
import { meridianSlots, powerAtReference } from '../../measures/power';
import { unwantedOfEach } from '../../measures/unwanted-prism';
import { orderedPrism } from '../../measures/wanted-prism';
import { EYES, type Order } from '../../model';
import { amountInWords, prismInWords } from '../../words';
import type { Rule } from '../rule';
import { whileItCounts } from './counting';

export const statedPositionOff: Rule = {
  code: 'stated-position-off',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The order states where each single vision lens is to stand before its eye, by a PD and a height of its own, and a lens makes more prism there than a lens by itself may. Only sets with limits for each mounted lens ask for this.',
    why: 'The pair is judged by what both lenses do together, and two centres off the same way cancel there. Where a position was stated for each lens, the set treats it like a progressive: each lens counts by itself.',
    example: {
      wrong: 'optical-centres R 33.5 L 29.5',
      right: 'optical-centres R 31 L 32',
    },
    source:
      'ISO 21987:2017 puts lenses for a stated position outside the pair limits, like progressives: from memory, text not seen.',
  },
  message: ({ eye, prism, most }) =>
    `${eye} makes ${prismInWords(prism as PrismVector, eye as Eye)} at its stated position; ${amountInWords(Number(most), 'prism')} is the most for one lens. Check its PD and height.`,
  needs: 'monocular',
  check: ({ order, evaluation }, report) => {
    const { set, values } = evaluation;
    if (!set?.lensPrism || order.supply !== 'glazed' || !EYES.every((eye) => isStated(order, eye))) return;
    const unwanted = unwantedOfEach(order, values);
    if (!unwanted) return;
    for (const eye of EYES) {
      const power = powerAtReference(order, order.lenses[eye]);
      if (power === null || power === 'unstated') continue;
      const { prism, place, reading } = unwanted[eye];
      const strongest = Math.abs(meridianSlots(power)[0].of(power));
      for (const { component, limits } of lensPrismLimits(set, 'progressive', 'glazed', orderedPrism(order, eye))) {
        const most = Math.max(...limits.map(({ amount, mm }) => tidy(amount + (mm / 10) * strongest)));
        const size =
          component === 'horizontal'
            ? prism.right
            : component === 'vertical'
              ? prism.up
              : Math.hypot(prism.right, prism.up);
        if (!isLess(most, Math.abs(size))) continue;
        report(place, { eye, prism, most }, { eye, level: whileItCounts(evaluation, reading, 'warning') });
        break;
      }
    }
  },
};

const isStated = ({ lenses, pd }: Order, eye: Eye): boolean =>
  isSingleVision(lenses[eye]) && pd[eye] !== null && lenses[eye].height !== null;
