import { tidy } from '../../exact';
import { isProgressive } from '../../lens-kinds';
import { EYES, type OrderedLens, otherEye } from '../../model';
import type { Rule } from '../rule';
import { madeLenses } from './lenses';
import { lineBelow } from './line-below';

export const prismOneSided: Rule = {
  code: 'prism-one-sided',
  family: 'order',
  level: 'info',
  page: {
    checks:
      'A progressive pair is ordered with prism before one eye only, and nothing says whether the laboratory may share it.',
    why: 'Shared between both lenses the prism is thinner and lighter, and what each eye sees is displaced alike. Some prescribers want it where they wrote it.',
    example: { wrong: 'prism R 2.00 BI', right: 'split free' },
    fix: 'Says whether it may be shared.',
    source: 'Opticians’ forum, “how free-form challenges us”: whether prism may be split is asked for by name.',
  },
  message: () => 'Prism before one eye of a progressive pair: may it be shared between the lenses?',
  fixes: (site) => [
    lineBelow(site, 'The laboratory may share it', 'split free'),
    lineBelow(site, 'It stays as written', 'split as-written'),
  ],
  needs: 'prism',
  check: ({ order }, report) => {
    if (order.split || order.yoked || madeLenses(order).length < EYES.length) return;
    for (const eye of EYES) {
      const [lens, other] = [order.lenses[eye], order.lenses[otherEye(eye)]];
      if (lens.prism && hasPrism(lens) && isProgressive(lens) && other.prism === null && other.prismUnclear === null)
        report(lens.prism.place, {}, { eye });
    }
  },
};

const hasPrism = ({ prism }: OrderedLens): boolean =>
  prism !== null && (tidy(prism.value.right) !== 0 || tidy(prism.value.up) !== 0);
