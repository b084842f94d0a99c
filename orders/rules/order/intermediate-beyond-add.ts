import { isLess } from '../../exact';
import { signed } from '../../words';
import type { Rule } from '../rule';
import { lensesOf, tellPerPlace } from './lenses';

export const intermediateBeyondAdd: Rule = {
  code: 'intermediate-beyond-add',
  family: 'order',
  level: 'error',
  page: {
    checks: 'The intermediate addition is larger than the add.',
    why: 'What lies between far and near needs less than the add for near; about half of it is usual. The two figures were probably exchanged.',
    example: { wrong: 'add +1.12 intermediate +2.25', right: 'add +2.25 intermediate +1.12' },
    source: 'Exam-study page on multifocals (opterio.com): the intermediate is half of the add.',
  },
  message: ({ intermediate, add }) =>
    `The intermediate addition ${signed(Number(intermediate))} is more than the add ${signed(Number(add))}.`,
  needs: 'intermediate',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      lensesOf(order).flatMap((lens) => {
        const { add, intermediate, design } = lens;
        const value = intermediate?.value ?? design?.value.intermediate;
        const place = intermediate?.place ?? design?.place;
        if (!add || value == null || !place || !isLess(add.value, value) || add.value < 0) return [];
        return [{ lens, place, data: { intermediate: value, add: add.value }, related: [add.place] }];
      }),
    );
  },
};
