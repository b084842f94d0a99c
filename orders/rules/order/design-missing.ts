import type { Rule } from '../rule';
import { isAttempted } from './attempted';
import { madeLenses } from './lenses';

export const designMissing: Rule = {
  code: 'design-missing',
  family: 'order',
  level: ({ add }) => (add ? 'error' : 'info'),
  page: {
    checks: 'No lens type is ordered. Such a lens is taken as single vision; with an add it cannot be.',
    levels: 'An error where there is an add, an info elsewhere.',
    why: 'Another product than the one meant was delivered in one lens of five in a study of spectacles bought on line. An add without a lens type may be a bifocal, a progressive or reading glasses.',
    example: { wrong: 'add +2.00', right: 'design bifocal flat-top 28' },
    source:
      'A poster on spectacles bought on line (21.4 % of lenses not as asked), as reported by mivision and Healio, 2012.',
  },
  message: ({ add }) =>
    add
      ? 'An add, and no lens type: single vision for near, a bifocal or a progressive?'
      : 'No lens type is said; single vision is taken.',
  check: (subject, report) => {
    const lacking = madeLenses(subject.order).filter(({ design }) => !design);
    const [first, other] = lacking;
    if (!first || isAttempted(subject, 'design')) return;
    const add = lacking.find((lens) => lens.add)?.add;
    const eye = other ? {} : { eye: first.eye };
    if (add) report(add.place, { add: add.value }, eye);
    else report(subject.order.place, {}, eye);
  },
};
