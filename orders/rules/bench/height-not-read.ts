import { isSingleVision } from '../../lens-kinds';
import { EYES } from '../../model';
import { madeLenses } from '../order/lenses';
import type { Rule } from '../rule';

export const heightNotRead: Rule = {
  code: 'height-not-read',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'A single-vision lens was ordered with a height, no height was measured, and the prism read at the reference points speaks of the horizontal alone.',
    why: 'The vertical place was ordered and nobody looked at it. Prism read at the ordered points answers it too, as soon as the line speaks of the vertical: a plain 0, or a base up or down.',
    example: { wrong: 'prism R 0.25 BO L 0.25 BO', right: 'prism R 0 L 0' },
    source:
      'ProFile ANZ, “heights matter beyond the multifocal”. What a line leaves unsaid: common practice, no source.',
  },
  message: ({ heights }) =>
    `A height of ${heights} mm is ordered, and neither a height nor vertical prism was measured. Where do the centres stand?`,
  check: ({ order, evaluation: { values } }, report) => {
    if (order.supply !== 'glazed') return;
    const placed = madeLenses(order).filter((lens) => lens.height !== null && isSingleVision(lens));
    if (placed.length === 0 || values.figures.height) return;
    const prisms = EYES.flatMap((eye) => values.prism[eye] ?? []);
    const [first] = prisms;
    // Where no prism was read at all, the missing vertical prism is told as not read.
    if (!first || prisms.some(({ unsaid }) => !unsaid?.includes('up'))) return;
    const heights = [...new Set(placed.map(({ height }) => height?.value))].join(' and ');
    report(first.place, { heights });
  },
};
