import { computeLens } from '../../computed';
import { isLess } from '../../exact';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

export const blankShort: Rule = {
  code: 'blank-short',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The ordered blank is smaller than the effective diameter and twice the decentration.',
    why: 'The lens will not fill the rim at its far corner, which shows only when it has been edged. The sum has no margin for chipped edges; many benches add 2 mm.',
    example: { wrong: 'blank 58', right: 'blank 65' },
    source: 'OpticalCourse free dispensing course, quiz answers.',
  },
  message: ({ blank, needed }) => `A blank of ${blank} mm does not cover this lens; it needs ${needed} mm.`,
  needs: 'blank',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        const { blank } = lens;
        const needed = blank && (computeLens(order, lens.eye)?.blank ?? null);
        if (!blank || needed === null || !isLess(blank.value, needed)) return [];
        return [{ lens, place: blank.place, data: { blank: blank.value, needed } }];
      }),
    );
  },
};
