import { hasReadingPart, isProgressive } from '../../lens-kinds';
import type { Rule } from '../rule';
import { isAttempted } from './attempted';
import { madeLenses, tellPerPlace } from './lenses';

export const addMissing: Rule = {
  code: 'add-missing',
  family: 'order',
  level: ({ type }) => (type === 'office' ? 'warning' : 'error'),
  page: {
    checks:
      'A multifocal or a progressive is ordered without its add. For an office lens it is asked for, since its power may be written either way.',
    levels: 'An error; a warning for an office lens.',
    why: 'The add cannot be inferred from anything else, and asking for it is the most common call from a laboratory.',
    example: { wrong: 'design progressive', right: 'add +2.00' },
    source: 'Reading adds head the office errors of a laboratory survey, 30.5 % (Pacific University thesis, 1992).',
  },
  message: ({ type }) =>
    type === 'office'
      ? 'No add: is the written power that for distance or that for near?'
      : `A ${type} lens needs its add.`,
  check: (subject, report) => {
    const lacking = madeLenses(subject.order).filter(
      (lens) => (hasReadingPart(lens) || isProgressive(lens)) && !lens.add,
    );
    if (lacking.length === 0 || isAttempted(subject, 'add')) return;
    tellPerPlace(
      report,
      lacking.flatMap((lens) =>
        lens.design ? [{ lens, place: lens.design.place, data: { type: lens.design.value.type } }] : [],
      ),
    );
  },
};
