import { minusForm, type Power, plusForm } from '../../../optics';
import type { CylinderForm } from '../../model';
import { powerInWords } from '../../words';
import { type Rule, replace } from '../rule';

export const formsMixed: Rule = {
  code: 'forms-mixed',
  family: 'order',
  level: 'hint',
  page: {
    checks: 'One lens is written with a plus cylinder and the other with a minus cylinder, or as two meridians.',
    why: 'Each is right by itself. Side by side they make two nearly equal lenses look different, and a sign copied from the line above goes unseen.',
    example: { wrong: 'L -5.25 +1.00 x 078', right: 'L -4.25 -1.00 x 168' },
    fix: 'Writes the second lens in the form of the first. It is the same lens.',
    source:
      'Common practice, no source. Two forms of one lens taken for a mistake: a French note on doctors’ and opticians’ formulas.',
  },
  message: ({ first }) => `The other lens is written ${FORMS[first as CylinderForm]}.`,
  fixes: (site) => {
    const { first, power } = site.finding.data;
    const turn = first === 'minus' ? minusForm : first === 'plus' ? plusForm : null;
    if (!turn) return [];
    const text = powerInWords(turn(power as Power));
    return [replace(site, `Write ${text}`, text, true)];
  },
  check: ({ order: { lenses } }, report) => {
    const [right, left] = [lenses.R.written, lenses.L.written];
    if (!right || !left) return;
    if (right.form === left.form || right.form === 'sphere' || left.form === 'sphere') return;
    const apart = right.place.line - left.place.line || right.place.start - left.place.start;
    const [first, second] = apart <= 0 ? [right, left] : [left, right];
    report(
      second.place,
      { first: first.form, power: second.value },
      { eye: second === left ? 'L' : 'R', related: [first.place] },
    );
  },
};

const FORMS: Readonly<Record<CylinderForm, string>> = {
  sphere: 'as a sphere',
  minus: 'with a minus cylinder',
  plus: 'with a plus cylinder',
  meridians: 'as two meridians',
};
