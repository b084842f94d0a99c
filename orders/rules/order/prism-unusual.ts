import type { Eye } from '../../../grammar';
import { imbalance, type PrismVector, prismBeforeEye } from '../../../optics';
import { attempt } from '../../attempt';
import { tidy } from '../../exact';
import { amountInWords, prismInWords } from '../../words';
import type { Rule } from '../rule';
import { lineBelow } from './line-below';

type Pair = Readonly<Record<Eye, PrismVector>>;

export const prismUnusual: Rule = {
  code: 'prism-unusual',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'Vertical prism has its base to the same side before both eyes, or horizontal prism has it in before one and out before the other, and the order does not say `yoked`.',
    why: 'Such prisms undo each other between the eyes: 2 up before both leaves nothing. They are meant when both eyes are to be turned the same way, and a slip otherwise. Equal prism that only makes a progressive thinner is written as `thinning`.',
    example: { wrong: 'prism R 2.00 BU L 2.00 BU', right: 'prism R 2.00 BU L 2.00 BD' },
    fix: 'Says that it is meant.',
    source: 'A question page on base directions: vertical prism opposite, horizontal prism alike, otherwise call.',
  },
  message: ({ pair, direction, net }) => {
    const { R, L } = pair as Pair;
    const rest = `${amountInWords(Number(net), 'prism')} ${direction === 'vertical' ? 'vertically' : 'horizontally'}`;
    return `R ${prismInWords(R, 'R')} and L ${prismInWords(L, 'L')} leave ${rest} between the eyes. Is that meant?`;
  },
  fixes: (site) => [lineBelow(site, 'It is meant', 'yoked')],
  needs: 'prism',
  check: ({ order }, report) => {
    const [right, left] = [order.lenses.R.prism, order.lenses.L.prism];
    if (!right || !left || order.yoked) return;
    const [first, second] = [prismBeforeEye(right.value, 'R'), prismBeforeEye(left.value, 'L')];
    const directions = [
      ...(tidy(first.up) * tidy(second.up) > 0 ? (['vertical'] as const) : []),
      ...(tidy(first.in) * tidy(second.in) < 0 ? (['horizontal'] as const) : []),
    ];
    for (const direction of directions) {
      const net = attempt(() => tidy(Math.abs(imbalance(right.value, left.value)[direction])));
      if (net === null) continue;
      const pair: Pair = { R: right.value, L: left.value };
      report(
        left.place,
        { direction, net, pair },
        { related: right.place.line === left.place.line ? [] : [right.place] },
      );
    }
  },
};
