import type { OrderedLens } from '../../model';
import { usePower } from '../../power-to-make';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { isAttempted } from './attempted';
import { madeLenses, tellPerPlace } from './lenses';

export const usePowerMissing: Rule = {
  code: 'use-power-missing',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'A single-vision lens is ordered for near without an add, or for an intermediate distance without its addition.',
    why: 'The written power is always the one for distance, and the lens is made to another: the power to make cannot be worked out, and no reading could be judged. Write the addition; or leave the use away where the written power is the one to make.',
    example: { wrong: 'design single-vision intermediate', right: 'design single-vision intermediate +1.25' },
    source: 'Reading adds head the office errors of a laboratory survey, 30.5 % (Pacific University thesis, 1992).',
  },
  message: ({ use }) =>
    use === 'near'
      ? 'Single vision for near, and no add: the power to make is not known. Write the add, or leave out “near” if the written power is the one to make.'
      : 'Single vision for an intermediate distance, and no addition: the power to make is not known. Write it, such as “intermediate +1.25”.',
  needs: 'single-vision',
  check: (subject, report) => {
    tellPerPlace(
      report,
      madeLenses(subject.order).flatMap((lens) => {
        const { design, written, verification } = lens;
        if (!design || !written || verification || usePower(lens) || isTyped(subject, lens)) return [];
        return [{ lens, place: design.place, data: { use: design.value.use } }];
      }),
    );
  },
};

/** An add that is there and cannot be read is told by itself, and so is a power beyond what can be made. */
const isTyped = (subject: Subject, { design, add, intermediate }: OrderedLens): boolean => {
  if (design?.value.use === 'near') return add !== null || isAttempted(subject, 'add');
  return design?.value.intermediate != null || intermediate !== null;
};
