import { isLess } from '../../exact';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';
import { madeLenses, tellPerPlace } from './lenses';

export const degressionBeyondAdd: Rule = {
  code: 'degression-beyond-add',
  family: 'order',
  level: 'warning',
  page: {
    checks: 'The degression of an office lens is larger than the add.',
    why: 'The top of the lens would be weaker than the distance power: with an add of 1.00 and a degression of 1.25 everything far away is over-minused by 0.25.',
    example: { wrong: 'design office degression 2.50', right: 'design office degression 1.25' },
    source: 'Optical Training Institute, computer vision and presbyopia, page 6.',
  },
  message: ({ degression, add }) =>
    `A degression of ${amountInWords(Number(degression), 'D')} is more than the add of ${amountInWords(Number(add), 'D')}.`,
  needs: 'degression',
  check: ({ order }, report) => {
    tellPerPlace(
      report,
      madeLenses(order).flatMap((lens) => {
        const { design, add } = lens;
        const degression = design?.value.degression;
        if (!design || !add || degression == null || !isLess(add.value, degression)) return [];
        return [{ lens, place: design.place, data: { degression, add: add.value }, related: [add.place] }];
      }),
    );
  },
};
