import { isLess, tidy } from '../../exact';
import { EYES } from '../../model';
import { signed } from '../../words';
import type { Rule } from '../rule';

export const intermediateUnusual: Rule = {
  code: 'intermediate-unusual',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'The intermediate addition of a trifocal was read, none was ordered, and it is more than 0.25 D away from half of the ordered add.',
    why: 'Where nothing else is ordered a trifocal has half of its add in the strip. Another share is another blank, and the wearer finds the screen or the shelf at the wrong distance. No limit can judge it, since none was ordered: ask, and write the intermediate into the order.',
    example: { wrong: 'add +2.00 intermediate +1.50', right: 'add +2.00 intermediate +1.00' },
    source:
      'Half of the add: exam-study page on multifocals (opterio.com). The bound of 0.25 D: common practice, no source.',
  },
  message: ({ lens, read, add }) =>
    `${lens} intermediate measured ${signed(Number(read))}, none ordered: half of the add ${signed(Number(add))} is ${signed(Number(add) / 2)}. Is this the right blank?`,
  check: ({ order, evaluation: { values } }, report) => {
    const sides = values.figures.intermediate;
    if (!sides) return;
    for (const eye of EYES) {
      const { design, add, intermediate, role } = order.lenses[eye];
      const read = sides[eye];
      if (!read || !add || role !== 'made' || design?.value.type !== 'trifocal') continue;
      if (intermediate || design.value.intermediate !== null) continue;
      if (!isLess(MOST, tidy(Math.abs(read.value - add.value / 2)))) continue;
      report(read.place, { lens: eye, read: read.value, add: add.value }, { eye, related: [add.place] });
    }
  },
};

/** Dioptres: two steps of a drum. Common practice, no source. */
const MOST = 0.25;
