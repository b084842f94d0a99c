import { commentStart } from '../../../grammar';
import { isLess } from '../../exact';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

/** Below this a height from the lower tangent is rare, and a distance from the middle of the lens is usual. */
const LOW = 10;
/** Half-eye spectacles are so shallow that their heights are as low. */
const SHALLOW = 22;

export const heightDatumUnclear: Rule = {
  code: 'height-datum-unclear',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'A height is below 10 mm, is not said to be below the datum line, and the frame is not a shallow one.',
    why: 'Heights are counted from the lower tangent; some benches count from the middle line instead. “2 below” and “2 high” are 16 mm apart in a lens of 36.',
    example: { wrong: 'height 2', right: 'height 2 below datum' },
    fix: 'Says that it is counted from the datum line downwards.',
    source:
      'BHVI, facial measurements and lens reference points: either datum works, mixed ones do not. The bound of 10 mm is ours.',
  },
  message: ({ height }) => `A height of ${height} mm: from the lower tangent, or below the datum line?`,
  fixes: ({ finding, lines }) => {
    const line = lines[finding.line] ?? '';
    const end = line.slice(0, commentStart(line)).trimEnd().length;
    const edits = [{ line: finding.line, start: end, end, text: ' below datum' }];
    return [{ title: 'It is below the datum line', safe: false, edits }];
  },
  check: ({ order }, report) => {
    const { b } = order.frame;
    if (b && !isLess(SHALLOW, b.value)) return;
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) => {
        const { height, belowDatum } = lens;
        const isLow = height && !belowDatum && isLess(height.value, LOW) && !isLess(height.value, 0);
        return isLow ? [{ lens, place: height.place, data: { height: height.value } }] : [];
      }),
    );
  },
};
