import { isLess } from '../../exact';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const heightBeyondFrame: Rule = {
  code: 'height-beyond-frame',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A height is larger than the boxed height of the lens, or lies below its lower tangent.',
    why: 'The point would lie outside the lens. Either the height was taken from another line, or the frame is another one.',
    example: { wrong: 'height 38', right: 'height 17' },
    source: 'The boxing system (ISO 8624): a height is counted from the lower tangent of the boxed lens.',
  },
  message: ({ height, b }) =>
    Number(height) < 0
      ? `This point lies ${-Number(height)} mm below the lens, which is ${b} mm high.`
      : `A height of ${height} mm lies outside a lens that is ${b} mm high.`,
  check: ({ order }, report) => {
    const { b } = order.frame;
    if (!b) return;
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) => {
        const { height } = lens;
        if (!height || (!isLess(b.value, height.value) && !isLess(height.value, 0))) return [];
        return [{ lens, place: height.place, data: { height: height.value, b: b.value }, related: [b.place] }];
      }),
    );
  },
};
