import { isLess, tidy } from '../../exact';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

/** Room that is left above any point a person looks through, millimetres. */
const LEAST = 7;
/** Half-eye spectacles are worn so low that their points stand close under the rim. */
const SHALLOW = 22;

export const heightImplausible: Rule = {
  code: 'height-implausible',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'A height leaves less than 7 mm of lens above its point, and the frame is not a shallow one.',
    why: 'A segment top or a fitting point that close under the upper rim stands above the pupil. The height was probably taken from another line, or counted from the upper rim.',
    example: { wrong: 'height 33', right: 'height 17' },
    source: 'Common practice, no source: makers ask for 8 to 12 mm above a fitting point. The bound is ours.',
  },
  message: ({ height, b, left }) =>
    `A height of ${height} mm in a lens ${b} mm high leaves ${left} mm above the point. Is it counted from the lower tangent?`,
  check: ({ order }, report) => {
    const { b } = order.frame;
    if (!b || !isLess(SHALLOW, b.value)) return;
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        const { height } = lens;
        const left = height ? tidy(b.value - height.value) : LEAST;
        if (!height || isLess(left, 0) || !isLess(left, LEAST)) return [];
        const data = { height: height.value, b: b.value, left };
        return [{ lens, place: height.place, data, related: [b.place] }];
      }),
    );
  },
};
